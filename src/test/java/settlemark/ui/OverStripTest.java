package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.swing.JPanel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import settlemark.job.Progress;
import settlemark.settle.SettleChoices;

/** What lies over the strip, without a window. */
class OverStripTest {
    private final JPanel strip = new JPanel();
    private int focused;
    private final OverStrip over = new OverStrip(Painting.look(), strip, () -> focused++);

    private static SettingsTyped typed() {
        return new SettingsTyped(
                new Showroom().at("found-low", Progress.OPEN, 20).snapshot().header(), SettleChoices.NONE);
    }

    private void settings(List<SettleChoices> chosen) {
        DeskPaneTest.onEdt(() -> {
            over.openSettings(typed(), chosen::add);
            return 0;
        });
    }

    private long open() {
        return Stream.of(over.keys(), over.settings(), over.visits())
                .filter(p -> p.isVisible())
                .count();
    }

    @Test
    void oneThingIsOpenAtATimeAndTheStripOnlyWhereNothingIs() {
        assertThat(open()).isZero();
        over.turnKeys(true);
        over.turnVisits();
        assertThat(over.visits().isVisible()).isTrue();
        assertThat(open()).isEqualTo(1);
        settings(new ArrayList<>());
        assertThat(over.settings().isVisible()).isTrue();
        assertThat(open()).isEqualTo(1);
        assertThat(strip.isVisible()).isFalse();
        over.leave();
        assertThat(open()).isZero();
        assertThat(strip.isVisible()).isTrue();
    }

    @ParameterizedTest
    @EnumSource(names = {"KEYS", "VISITS"})
    void theKeyThatOpenedAListIsLeftToCloseItAndAnyOtherClosesItFirst(Deed opener) {
        Runnable turn = opener == Deed.KEYS ? () -> over.turnKeys(false) : over::turnVisits;
        turn.run();
        assertThat(over.takes(opener)).isFalse();
        assertThat(open()).isEqualTo(1);
        turn.run();
        assertThat(open()).isZero();
        turn.run();
        assertThat(over.takes(Deed.PRIMARY)).as("the act is still to be done").isFalse();
        assertThat(open()).isZero();
        turn.run();
        assertThat(over.takes(Deed.NOW)).as("Esc is spent on closing").isTrue();
        assertThat(open()).isZero();
        assertThat(focused).as("a list takes no focus").isZero();
    }

    @Test
    void whatIsTypedStaysOverLightDarkAndTheLanguageAndGivesTheFocusBack() {
        settings(new ArrayList<>());
        assertThat(over.takes(Deed.THEME)).isFalse();
        assertThat(over.takes(Deed.LANGUAGE)).isFalse();
        assertThat(over.settings().isVisible()).isTrue();
        assertThat(over.takes(Deed.SETTINGS)).as("its own key only closes it").isTrue();
        assertThat(over.settings().isVisible()).isFalse();
        assertThat(focused).isEqualTo(1);
        settings(new ArrayList<>());
        assertThat(over.takes(Deed.KEYS)).isFalse();
        assertThat(over.settings().isVisible()).isFalse();
        assertThat(focused).isEqualTo(2);
        assertThat(over.takes(Deed.NOW)).as("nothing was open").isFalse();
    }

    @Test
    void whatIsChosenClosesIt() {
        List<SettleChoices> chosen = new ArrayList<>();
        settings(chosen);
        DeskPaneTest.onEdt(() -> {
            over.settings().field(SettingsTyped.Setting.DRIFT).setText("0.5");
            over.settings().field(SettingsTyped.Setting.DRIFT).postActionEvent();
            return 0;
        });
        assertThat(chosen).hasSize(1);
        assertThat(open()).isZero();
        assertThat(focused).isEqualTo(1);
    }

    @Test
    void whatIsMadeAnewShowsWhatWasOpen() {
        over.turnKeys(true);
        OverStrip anew = new OverStrip(Painting.look(), new JPanel(), () -> {});
        anew.goOn(over, true, () -> {
            throw new AssertionError("nothing was typed");
        });
        assertThat(anew.keys().isVisible()).isTrue();
        settings(new ArrayList<>());
        DeskPaneTest.onEdt(() -> {
            over.settings().field(SettingsTyped.Setting.DRIFT).setText("0.75");
            OverStrip other = new OverStrip(Painting.look(), new JPanel(), () -> {});
            other.goOn(over, true, () -> other.openSettings(typed(), c -> {}));
            assertThat(other.settings().field(SettingsTyped.Setting.DRIFT).getText())
                    .isEqualTo("0.75");
            return 0;
        });
    }
}
