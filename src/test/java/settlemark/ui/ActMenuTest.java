package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.formdev.flatlaf.util.UIScale;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The menu of each place holds every act, in each language, and each of its menus has a key of its own. */
class ActMenuTest {
    @AfterEach
    void english() {
        Words.speak(Language.ENGLISH);
    }

    private static JMenuBar bar(Deed.Place place) {
        return DeskPaneTest.onEdt(() -> {
            JMenuBar bar = new JMenuBar();
            ActMenu.fill(bar, Deed.of(place), deed -> {});
            return bar;
        });
    }

    @ParameterizedTest
    @EnumSource(Deed.Place.class)
    void noTwoMenusHaveTheSameKeyAndNoneIsWithout(Deed.Place place) {
        for (Language language : Language.values()) {
            Words.speak(language);
            JMenuBar bar = bar(place);
            List<Integer> keys = new ArrayList<>();
            for (int i = 0; i < bar.getMenuCount(); i++) {
                JMenu menu = bar.getMenu(i);
                keys.add(menu.getMnemonic());
                assertThat(menu.getDisplayedMnemonicIndex())
                        .as("%s in %s", menu.getText(), language)
                        .isNotNegative();
            }
            assertThat(keys)
                    .as("%s in %s", place, language)
                    .doesNotHaveDuplicates()
                    .hasSizeGreaterThan(1);
        }
    }

    @ParameterizedTest
    @CsvSource({"JOB, 25", "START, 10", "REVIEW, 20", "WORKSHOP, 10", "BENCH, 10"})
    void everyActIsInItWithItsKeyAndInTheSizeOfText(Deed.Place place, int least) {
        JMenuBar bar = bar(place);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < bar.getMenuCount(); i++) {
            for (int k = 0; k < bar.getMenu(i).getItemCount(); k++) {
                JMenuItem item = bar.getMenu(i).getItem(k);
                texts.add(item.getText());
                assertThat((double) item.getFont().getSize2D())
                        .isCloseTo(UIScale.scale((float) Look.BODY), within(0.01));
                assertThat(item.getAccessibleContext().getAccessibleName()).contains(", key ");
            }
        }
        List<Deed> deeds = Deed.of(place).stream().filter(d -> d != Deed.MENU).toList();
        assertThat(texts).hasSize(deeds.size()).hasSizeGreaterThanOrEqualTo(least);
        for (Deed deed : deeds) {
            assertThat(texts).anyMatch(t -> t.endsWith("   " + deed.label()));
        }
    }
}
