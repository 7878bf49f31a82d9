package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import javax.swing.JButton;
import javax.swing.JTextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import settlemark.job.JobState;
import settlemark.session.OtherLimit;

/** Other limits as a person types them, without a screen. */
final class LimitsPaneTest {
    private static final JobState JOB = Objects.requireNonNull(Shots.all().get("08-left-high-armed"))
            .get()
            .snapshot()
            .job()
            .orElseThrow();

    /** The first manifold that has a verdict as left. */
    private static final String LOW = "As left, low fire, Manifold, at least";

    private static final String HIGH = "As left, low fire, Manifold, at most";

    private final List<OtherLimit> kept = new ArrayList<>();

    @AfterEach
    void english() {
        Words.speak(Language.ENGLISH);
    }

    private LimitsPane pane(OtherLimit... before) {
        return DeskPaneTest.onEdt(() -> {
            LimitsPane pane = new LimitsPane(Painting.look());
            pane.open(new LimitsTyped(JOB, JOB, UnaryOperator.identity(), List.of(before)), "left-low", limits -> {
                kept.clear();
                kept.addAll(limits);
            });
            return pane;
        });
    }

    private static <T> List<T> parts(Container in, Class<T> kind) {
        List<T> found = new ArrayList<>();
        for (Component part : in.getComponents()) {
            if (kind.isInstance(part)) {
                found.add(kind.cast(part));
            } else if (part instanceof Container inner) {
                found.addAll(parts(inner, kind));
            }
        }
        return found;
    }

    private static List<JTextField> fields(LimitsPane pane) {
        return parts(pane, JTextField.class);
    }

    private static List<JButton> buttons(LimitsPane pane) {
        return parts(pane, JButton.class);
    }

    private static JTextField field(LimitsPane pane, String name) {
        return fields(pane).stream()
                .filter(f -> f.getAccessibleContext().getAccessibleName().contains(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no field " + name + " among "
                        + fields(pane).stream()
                                .map(f -> f.getAccessibleContext().getAccessibleName())
                                .toList()));
    }

    private static String said(LimitsPane pane, String name) {
        return field(pane, name).getAccessibleContext().getAccessibleDescription();
    }

    private static void type(LimitsPane pane, String name, String text) {
        DeskPaneTest.onEdt(() -> {
            field(pane, name).setText(text);
            return 0;
        });
    }

    private boolean keeps(LimitsPane pane) {
        return DeskPaneTest.onEdt(pane::keep);
    }

    @Test
    void theVerdictFollowsWhatIsTypedAndAFaultIsSaidAtItsField() {
        LimitsPane pane = pane();
        assertThat(said(pane, LOW)).isEqualTo("inside");
        type(pane, LOW, "1.9");
        assertThat(said(pane, LOW)).isEqualTo("the least lies above the most");
        type(pane, HIGH, "2.1");
        assertThat(said(pane, LOW)).isEqualTo("outside (was inside)");
        type(pane, LOW, "1.9x");
        assertThat(said(pane, LOW)).isEqualTo("type a number with a point, such as 0.01; got \"1.9x\"");
        assertThat(keeps(pane)).isFalse();
        assertThat(pane.isVisible()).isTrue();
        assertThat(kept).isEmpty();
        type(pane, LOW, "1.9");
        assertThat(keeps(pane)).isTrue();
        assertThat(pane.isVisible()).isFalse();
        assertThat(kept).extracting(OtherLimit::text).containsExactly("left-low.manifold=1.9..2.1 [in_i'H2O]");
    }

    @Test
    void whatWasKeptIsThereAgainAndCanBeMadeTheDays() {
        LimitsPane pane = pane(OtherLimit.of("left-low.manifold=1.9..2.1"));
        assertThat(field(pane, LOW).getText()).isEqualTo("1.9");
        assertThat(said(pane, LOW)).isEqualTo("outside (was inside)");
        DeskPaneTest.onEdt(() -> {
            buttons(pane).stream()
                    .filter(b -> b.getAccessibleContext().getAccessibleName().equals("As on the day"))
                    .findFirst()
                    .orElseThrow()
                    .doClick(0);
            return 0;
        });
        assertThat(said(pane, LOW)).isEqualTo("inside");
        assertThat(keeps(pane)).isTrue();
        assertThat(kept).isEmpty();
    }

    @Test
    void anotherLanguageKeepsWhatIsTyped() {
        LimitsPane pane = pane();
        type(pane, LOW, "2");
        Words.speak(Language.GERMAN);
        LimitsPane german = DeskPaneTest.onEdt(() -> {
            LimitsPane made = new LimitsPane(Painting.look());
            made.goOn(pane);
            return made;
        });
        assertThat(fields(german))
                .filteredOn(f -> f.getText().equals("2"))
                .extracting(f -> f.getAccessibleContext().getAccessibleName())
                .singleElement()
                .asString()
                .contains("D\u00fcse, mindestens");
        assertThat(german.getAccessibleContext().getAccessibleName()).isEqualTo("Andere Grenzen");
    }
}
