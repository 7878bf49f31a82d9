package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every view in every size and language: each thing has a name, each field a label, and no word is cut off. */
class WalkTest {
    @AfterEach
    void english() {
        Words.speak(Language.ENGLISH);
    }

    @ParameterizedTest
    @CsvSource({"ENGLISH, 1280, 720, 1", "PSEUDO, 1920, 1080, 2"})
    void nothingIsNamelessOrCutOff(Language language, int width, int height, double textScale) {
        walk(language, width, height, textScale);
    }

    @Tag("long")
    @ParameterizedTest
    @CsvSource({
        "ENGLISH, 1280, 720, 1.25",
        "ENGLISH, 1920, 1080, 1.5",
        "ENGLISH, 1920, 1080, 2",
        "GERMAN, 1280, 720, 1",
        "GERMAN, 1920, 1080, 1.5",
        "GERMAN, 1920, 1080, 2",
        "PSEUDO, 1280, 720, 1",
        "PSEUDO, 1920, 1080, 1.5"
    })
    void nothingIsNamelessOrCutOffInTheOtherSizes(Language language, int width, int height, double textScale) {
        walk(language, width, height, textScale);
    }

    private static void walk(Language language, int width, int height, double textScale) {
        Words.speak(language);
        List<String> findings = new ArrayList<>();
        List<String> views = new ArrayList<>();
        WalkedScenes.all(width, height, textScale, (view, found) -> {
            views.add(view);
            found.forEach(f -> findings.add(view + ": " + f));
        });
        assertThat(findings)
                .as(String.format(
                        Locale.ROOT, "%s, %d x %d, text at %.0f %%", language, width, height, textScale * 100))
                .isEmpty();
        assertThat(views).as("views walked through").hasSizeGreaterThanOrEqualTo(30);
    }

    /** A walk that finds nothing is worth what it finds where something is wrong. */
    @Test
    void theWalkFindsWhatIsPlanted() {
        List<String> findings = DeskPaneTest.onEdt(() -> WindowWalk.findings(faulty()));
        assertThat(findings).anyMatch(f -> f.startsWith("no name: JButton"));
        assertThat(findings).anyMatch(f -> f.startsWith("no label is for it: JTextField"));
        assertThat(findings).anyMatch(f -> f.startsWith("cut off: \"a label with many words\""));
        assertThat(findings).anyMatch(f -> f.contains("cut off by") && f.contains("painted over the edge"));
        assertThat(findings).anyMatch(f -> f.startsWith("one over the other: \"first\" and \"second\""));
    }

    private static JPanel faulty() {
        JPanel panel = new JPanel(null);
        panel.setSize(new Dimension(400, 300));
        JButton nameless = new JButton();
        nameless.setBounds(0, 0, 40, 20);
        JTextField unlabelled = new JTextField();
        unlabelled.getAccessibleContext().setAccessibleName("a field");
        unlabelled.setBounds(0, 30, 80, 30);
        JLabel label = new JLabel("a label with many words");
        label.setBounds(0, 70, 30, 20);
        Painted painted = new Painted(Painting.look(), javax.accessibility.AccessibleRole.LABEL) {
            @Override
            void draw(Pen pen) {
                pen.text(
                        "painted over the edge",
                        look.regular(Look.BODY),
                        pen.theme().ink(),
                        60,
                        20);
                pen.text("first", look.regular(Look.BODY), pen.theme().ink(), 4, 50);
                pen.text("second", look.regular(Look.BODY), pen.theme().ink(), 8, 52);
            }
        };
        painted.sentence("painted");
        painted.setBounds(200, 0, 100, 80);
        panel.add(nameless);
        panel.add(unlabelled);
        panel.add(label);
        panel.add(painted);
        return panel;
    }
}
