package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javax.swing.JDialog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.chart.ChartTheme;
import settlemark.chart.Lane;
import settlemark.chart.LaneView;
import settlemark.chart.Mark;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.SafetyNotice;
import settlemark.measure.Role;
import settlemark.session.Snapshot;

/** What the window promises to the eye: sizes on real screens, text never too small, colour only where it says something. */
class AcceptanceTest {
    private static final long SECOND = 1_000_000_000L;

    private static DeskPaneTest.Bench bench(Showroom room, int width, int height, Look look) {
        return DeskPaneTest.onEdt(() -> new DeskPaneTest.Bench(room, width, height, look));
    }

    @ParameterizedTest
    @CsvSource({"1280, 720, 96", "1366, 768, 112", "1920, 1080, 141"})
    void digitsOfTheStepAreTwentyMillimetresByTheRulerOnEveryScreen(int width, int height, double dotsPerInch) {
        double pixelsPerMm = dotsPerInch / 25.4;
        DeskPaneTest.Bench bench =
                bench(Shots.room("08-left-high-armed"), width, height, new Look(false, 1, pixelsPerMm));
        List<Readout> rows = Painting.visible(bench.pane(), Readout.class);
        assertThat(rows).hasSize(4);
        for (Readout row : rows) {
            BufferedImage image = Painting.paint(row.digits());
            assertThat(inkHeight(image) / pixelsPerMm)
                    .as("mm of %s", row.sentence())
                    .isGreaterThanOrEqualTo(19.8);
        }
    }

    /** Rows between the first and the last that has ink. */
    private static int inkHeight(BufferedImage image) {
        int first = -1;
        int last = -1;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                if (Painting.grey(image, x, y) < 128) {
                    first = first < 0 ? y : first;
                    last = y;
                }
            }
        }
        return last - first + 1;
    }

    @Test
    void noTextIsUnderThirteenPixels() {
        Set<String> small = new TreeSet<>();
        Shots.all().forEach((name, room) -> {
            DeskPaneTest.Bench bench = bench(room.get(), 1280, 720, Painting.look());
            DeskPaneTest.onEdt(() -> WindowWalk.texts(bench.pane())).stream()
                    .filter(t -> t.size() < Look.AXIS - 0.5)
                    .forEach(t -> small.add(name + ": " + t.words() + " " + t.size()));
        });
        assertThat(small).isEmpty();
    }

    @Test
    void farViewSaysNothingUnderFourteenMillimetresButUnitAndName() {
        Look look = Painting.look();
        DeskPaneTest.Bench bench = bench(Shots.room("08-left-high-armed"), 1280, 720, look);
        bench.perform(Deed.FAR_VIEW);
        for (FarView.FarRow row : Painting.visible(bench.pane(), FarView.FarRow.class)) {
            List<TextRecorder.Text> texts = DeskPaneTest.onEdt(() -> WindowWalk.texts(row));
            assertThat(texts).hasSizeGreaterThanOrEqualTo(4);
            // The first two are the name and the unit.
            for (TextRecorder.Text text : texts.subList(2, texts.size())) {
                double high = text.size() * Look.digitHeight(look.semiBoldPx(100));
                assertThat(high / look.pixelsPerMm()).as(text.words()).isGreaterThanOrEqualTo(13.9);
            }
        }
    }

    /** As a copying machine sees them. */
    @Test
    void everyVerdictAndEveryHealthIsToldApartInGrey() {
        List<BufferedImage> marks = new ArrayList<>();
        for (Mark mark : List.of(Mark.INSIDE, Mark.CLOSE, Mark.OUTSIDE, Mark.NOT_TAKEN, Mark.NOW)) {
            marks.add(drawn(g -> mark.draw(g, 8, 8, 48, ChartTheme.LIGHT)));
        }
        for (String letter : List.of("F", "C", "S", "M")) {
            marks.add(drawn(
                    g -> Mark.drawHealth(g, letter.charAt(0), 8, 8, 48, ChartTheme.LIGHT.notice(), ChartTheme.LIGHT)));
        }
        for (int i = 0; i < marks.size(); i++) {
            for (int k = i + 1; k < marks.size(); k++) {
                assertThat(Painting.different(marks.get(i), marks.get(k)))
                        .as("%d and %d", i, k)
                        .isGreaterThan(40);
            }
        }
    }

    private interface Drawing {
        void on(Graphics2D g);
    }

    private static BufferedImage drawn(Drawing drawing) {
        BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, 64, 64);
        drawing.on(g);
        g.dispose();
        return image;
    }

    /** From the first low reading on something is wrong: it was found outside its limit. */
    @ParameterizedTest
    @ValueSource(strings = {"plate", "probes", "zero", "lock-up", "found-low"})
    void whereNothingIsWrongOnlyTheSeriesHaveAColour(String step) {
        Set<String> hues = hues(new Showroom().at(step, Progress.OPEN, 60));
        assertThat(hues).as("hues but the series' blue").isSubsetOf("blue");
    }

    @Test
    void whatIsWrongHasAColour() {
        assertThat(hues(Shots.room("09-stale"))).contains("red or orange");
        assertThat(hues(Shots.room("02-probes"))).contains("red or orange");
        assertThat(hues(Shots.room("10-shut")))
                .as("a reading that was found outside")
                .contains("red or orange");
    }

    private static Set<String> hues(Showroom room) {
        DeskPaneTest.Bench bench = bench(room, 1280, 720, Painting.look());
        BufferedImage image = DeskPaneTest.onEdt(() -> Painting.paint(bench.pane()));
        Set<String> hues = new TreeSet<>();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                Color color = new Color(image.getRGB(x, y));
                float[] hsb = Color.RGBtoHSB(color.getRed(), color.getGreen(), color.getBlue(), null);
                // Pale fills are ground, not colour.
                if (hsb[1] > 0.35 && hsb[2] > 0.25) {
                    hues.add(
                            hsb[0] > 0.53 && hsb[0] < 0.62
                                    ? "blue"
                                    : hsb[0] < 0.14 || hsb[0] > 0.95 ? "red or orange" : "other");
                }
            }
        }
        return hues;
    }

    @Test
    void whatWasFoundStaysInSightWhileTheStageIsSet() {
        DeskPaneTest.Bench bench = bench(Shots.room("06-left-low-adjusting"), 1280, 720, Painting.look());
        Scene scene = bench.scene();
        LaneView view = WorkCharts.adjust(
                scene,
                scene.snapshot().channel(Role.MANIFOLD).orElseThrow(),
                scene.stage().orElseThrow());
        assertThat(view.lanes().get(0).traces())
                .extracting(Lane.TraceLine::label)
                .anyMatch(w -> w.startsWith("as found 1.5"));
        assertThat(Painting.visible(bench.pane().strip(), Fold.class))
                .extracting(Painted::sentence)
                .anyMatch(s -> s.startsWith("As found, low fire") && s.contains("manifold 1.51"));
    }

    @Test
    void everyButtonShowsItsKey() {
        Shots.all().forEach((name, room) -> {
            DeskPaneTest.Bench bench = bench(room.get(), 1280, 720, Painting.look());
            for (ActButton button : Painting.visible(bench.pane().buttons(), ActButton.class)) {
                List<String> words = DeskPaneTest.onEdt(() -> WindowWalk.texts(button)).stream()
                        .map(TextRecorder.Text::words)
                        .toList();
                boolean waits = button.choice().deed() == Deed.PRIMARY && !button.isEnabled();
                assertThat(waits
                                || words.stream()
                                        .anyMatch(w -> w.contains(
                                                button.choice().deed().label())))
                        .as("%s, %s: %s", name, button.choice().title(), words)
                        .isTrue();
            }
        });
    }

    @Test
    void aSafetyNoticeTakesTheStepsPlaceAtTheNextLookAndStaysUntilItIsSeen() {
        Showroom room = new Showroom().at("left-high", Progress.ARMED, 150);
        DeskPaneTest.Bench bench = bench(room, 1280, 720, Painting.look());
        int before = bench.pane().step().getHeight();
        Snapshot alarm = noticed(room.snapshot(), -1, -1);
        show(bench, alarm);
        assertThat(bench.pane().step().sentence()).startsWith("Inlet 11.20 inH\u2082O: over the most");
        assertThat(bench.pane().step().getHeight()).isGreaterThanOrEqualTo(2 * before - 4);
        BufferedImage bar = DeskPaneTest.onEdt(() -> Painting.paint(bench.pane().step()));
        assertThat(new Color(bar.getRGB(3, 3))).isEqualTo(ChartTheme.LIGHT.fault());
        for (Component up = bench.pane().step(); up != null; up = up.getParent()) {
            assertThat(up).isNotInstanceOf(JDialog.class);
        }
        show(bench, noticed(room.snapshot(), alarm.timeNanos(), -1));
        assertThat(bench.pane().step().sentence())
                .as("cured, but nobody has seen it")
                .startsWith("Inlet 11.20 inH\u2082O: over the most")
                .contains("over now");
        bench.perform(Deed.SEEN);
        assertThat(bench.desk.acts()).contains(new Act.Seen("inlet-over"));
        show(bench, noticed(room.snapshot(), -1, alarm.timeNanos()));
        assertThat(bench.pane().step().sentence())
                .as("seen, it stays as a line until it is cured")
                .doesNotStartWith("Inlet 11.20")
                .contains("Inlet 11.20 inH\u2082O: over the most");
    }

    private static void show(DeskPaneTest.Bench bench, Snapshot snapshot) {
        bench.desk.show(snapshot);
        DeskPaneTest.onEdt(() -> {
            bench.controller.show(snapshot, true);
            Painting.layOut((Container) bench.pane());
            return 0;
        });
    }

    private static Snapshot noticed(Snapshot of, long cured, long seen) {
        JobState job = of.job().orElseThrow();
        SafetyNotice notice = new SafetyNotice(
                "inlet-over",
                of.timeNanos() - 2 * SECOND,
                cured,
                seen,
                "Inlet 11.20 inH\u2082O: over the most that the plate allows, 10.50",
                "Shut the gas off at the manual valve.");
        JobState with = new JobState(
                job.plan(),
                job.plate(),
                job.steps(),
                job.current(),
                job.zeroOffsets(),
                job.person(),
                job.notes(),
                List.of(notice),
                job.instruments(),
                job.visits(),
                job.settings());
        return new Snapshot(
                of.revision() + 1,
                of.timeNanos(),
                of.wall(),
                of.header(),
                of.probes(),
                of.channels(),
                Optional.of(with),
                of.stored(),
                of.events());
    }

    @Test
    void anOldValueIsGreyAndItsBarIsGone() {
        DeskPaneTest.Bench bench = bench(Shots.room("09-stale"), 1280, 720, Painting.look());
        List<Readout> rows = Painting.visible(bench.pane(), Readout.class);
        BufferedImage old = Painting.paint(rows.get(0).digits());
        BufferedImage fresh = Painting.paint(rows.get(2).digits());
        int ink2 = grey(ChartTheme.LIGHT.ink2());
        assertThat(darkest(old)).as("digits in the second ink").isBetween(ink2 - 6, ink2 + 6);
        assertThat(darkest(fresh)).isLessThan(ink2 - 20);
        assertThat(bench.scene().snapshot().channel(Role.INLET).orElseThrow().stale())
                .isTrue();
        Gap gap = Gap.of(
                bench.scene().snapshot().channel(Role.INLET).orElseThrow(),
                bench.scene().snapshot().timeNanos());
        assertThat(gap.ratio()).as("no bar").isNaN();
        assertThat(gap.word()).contains("12 s");
    }

    private static int grey(Color color) {
        BufferedImage one = drawn(g -> {
            g.setColor(color);
            g.fill(new Rectangle2D.Double(0, 0, 64, 64));
        });
        return Painting.grey(one, 32, 32);
    }

    private static int darkest(BufferedImage image) {
        int darkest = 255;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                darkest = Math.min(darkest, Painting.grey(image, x, y));
            }
        }
        return darkest;
    }
}
