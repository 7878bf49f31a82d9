package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.link.RadioBench;
import settlemark.session.BenchView;
import settlemark.session.Spark;

/** A log of many channels: rows that are named and fit, and a real window with real keys. */
@Timeout(120)
class BenchWindowTest {
    private @Nullable DesktopStart start;

    @AfterEach
    void close() {
        if (start != null) {
            start.close();
        }
        Words.speak(Language.ENGLISH);
    }

    private static BenchController laidOut(int probes, int width, int height, double textScale) {
        return DeskPaneTest.onEdt(() -> {
            BenchController controller = BenchScenes.controller(Painting.look(textScale), probes);
            controller.pane().setSize(width, height);
            Painting.layOut(controller.pane());
            Painting.layOut(controller.pane());
            return controller;
        });
    }

    @Test
    void sixtyFourChannelsStandOnOneWideScreenInRowsThatAreHighEnough() {
        int probes = (int) Math.ceil(64.0 / BenchScenes.SET.channels().size());
        BenchController controller = laidOut(probes, 1920, 1080, 1);
        List<BenchRow> rows = Painting.visible(controller.pane(), BenchRow.class);
        assertThat(rows).hasSizeGreaterThanOrEqualTo(64).allMatch(r -> r.getHeight() >= 26 && r.getWidth() >= 440);
        assertThat(controller.pane().rows().pages()).isEqualTo(1);
        for (int i = 0; i < rows.size(); i++) {
            for (int k = i + 1; k < rows.size(); k++) {
                assertThat(rows.get(i).getBounds().intersects(rows.get(k).getBounds()))
                        .isFalse();
            }
        }
        assertThat(Painting.visible(controller.pane(), BenchHead.class)).hasSize(probes);
    }

    @Test
    void aLineThatIsPaintedFromAColumnOnIsTheLineAsAWhole() {
        Random random = new Random(3);
        double[] lows = random.doubles(Spark.COLUMNS, 3, 4).toArray();
        double[] highs = new double[lows.length];
        Arrays.setAll(highs, i -> lows[i] + random.nextDouble());
        Arrays.fill(lows, 40, 46, Double.NaN);
        Arrays.fill(highs, 40, 46, Double.NaN);
        double[] grown = highs.clone();
        grown[Spark.COLUMNS - 1] = Math.min(4.6, grown[Spark.COLUMNS - 1] + 0.3);
        Rectangle2D box = new Rectangle2D.Double(10.5, 3, 170.2, 22);
        for (boolean exact : new boolean[] {true, false}) {
            SparkLine line = new SparkLine(exact);
            assertThat(line.show(new Spark(lows, highs))).isZero();
            BufferedImage image = new BufferedImage(200, 28, BufferedImage.TYPE_INT_RGB);
            paint(line, box, image, new Rectangle(0, 0, 200, 28));
            int from = line.show(new Spark(lows, grown));
            assertThat(from).isGreaterThan(Spark.COLUMNS - 3);
            paint(line, box, image, SparkLine.dirty(box, from));
            BufferedImage whole = new BufferedImage(200, 28, BufferedImage.TYPE_INT_RGB);
            paint(line, box, whole, new Rectangle(0, 0, 200, 28));
            assertThat(image.getRGB(0, 0, 200, 28, null, 0, 200)).isEqualTo(whole.getRGB(0, 0, 200, 28, null, 0, 200));
            assertThat(line.show(new Spark(lows, grown))).isEqualTo(Spark.COLUMNS);
            double[] far = grown.clone();
            far[60] = 9;
            assertThat(line.show(new Spark(lows, far))).isZero();
        }
    }

    private static void paint(SparkLine line, Rectangle2D box, BufferedImage image, Rectangle clip) {
        Graphics2D graphics = image.createGraphics();
        graphics.clip(clip);
        Pen pen = new Pen(graphics, Painting.look());
        pen.fill(Color.WHITE, 0, 0, 200, 28);
        line.draw(pen, box, Color.BLACK);
        pen.dispose();
        graphics.dispose();
    }

    @Test
    void whereTheScreenIsSmallTheyArePagedAndTheChosenRowIsInSight() {
        BenchController controller = laidOut(12, 1280, 720, 1.25);
        int pages = controller.pane().rows().pages();
        assertThat(pages).isGreaterThan(1);
        DeskPaneTest.onEdt(() -> {
            controller.perform(Deed.ROW_LAST);
            return 0;
        });
        List<BenchRow> all = controller.pane().rows().rows();
        assertThat(all.get(all.size() - 1).isVisible()).isTrue();
        assertThat(all.get(0).isVisible()).isFalse();
        DeskPaneTest.onEdt(() -> {
            controller.perform(Deed.PAGE_NEXT);
            return 0;
        });
        assertThat(all.get(0).isVisible()).as("after the last page the first").isTrue();
    }

    @Test
    void eachRowSaysItsNameItsValueAndItsStateInWords() {
        BenchController controller = laidOut(3, 1920, 1080, 1);
        List<String> said =
                controller.pane().rows().rows().stream().map(BenchRow::sentence).toList();
        int each = BenchScenes.SET.channels().size();
        assertThat(said.get(0)).startsWith("Manifold 40").contains("settled, \u00b1");
        assertThat(said.get(1)).contains("over range");
        assertThat(said.get(each - 1)).contains("no data yet");
        assertThat(said.get(each + 1)).contains("moving");
        assertThat(said.get(2 * each)).as("the probe that fell silent").contains("no data 20 s");
        assertThat(said).allMatch(s -> !s.isBlank());
        assertThat(controller.pane().detail().sentence()).startsWith("chosen, bench-1: Manifold 40");
    }

    @Test
    void everyPlaceListsAllOfItsKeys() {
        for (Deed.Place place : List.of(Deed.Place.JOB, Deed.Place.REVIEW, Deed.Place.WORKSHOP, Deed.Place.BENCH)) {
            KeyList list = DeskPaneTest.onEdt(() -> {
                KeyList made = new KeyList(Painting.look());
                if (place == Deed.Place.JOB) {
                    made.list(true);
                } else {
                    made.list(
                            place == Deed.Place.REVIEW
                                    ? ReviewChoices.keys()
                                    : Deed.of(place).stream()
                                            .map(d -> new KeyList.Line(d.label(), d.words()))
                                            .toList());
                }
                return made;
            });
            for (Deed deed : Deed.of(place)) {
                boolean large = deed == Deed.PRIMARY && place == Deed.Place.REVIEW;
                if (!large) {
                    assertThat(list.sentence()).as("%s in %s", deed, place).contains(deed.label() + ": ");
                }
            }
        }
    }

    @Test
    @Tag("display")
    void rowsAreChosenByKeysAndPointerShownInOtherUnitsAndTheLogEndsInTheWindow() throws Exception {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
        BenchView view = BenchScenes.view(3);
        AtomicInteger ended = new AtomicInteger();
        DesktopStart window = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Settlemark");
        start = window;
        window.bench(() -> view, ended::incrementAndGet);
        WindowHands hands = new WindowHands();
        hands.awaitSeen("chosen, bench-1: Manifold");
        hands.key(KeyEvent.VK_DOWN);
        String second = BenchScenes.SET.channels().get(1).label();
        hands.awaitSeen("chosen, bench-1: " + second);
        hands.key(KeyEvent.VK_END);
        hands.awaitSeen("chosen, bench-3: ");
        hands.click("Manifold 40");
        hands.awaitSeen("chosen, bench-1: Manifold 40");
        hands.click("Units");
        hands.awaitWords("Shown in inH\u2082O and \u00b0F; stored as before");
        hands.awaitWords("inches of water");
        hands.control(KeyEvent.VK_L);
        hands.awaitSeen("gew\u00e4hlt, bench-1: D\u00fcse");
        hands.control(KeyEvent.VK_L);
        hands.awaitSeen("chosen, bench-1: Manifold");
        hands.key(KeyEvent.VK_F10);
        RadioBench.await("the menu", WindowHands::menuShown);
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_ESCAPE);
        RadioBench.await("the menu has gone", () -> !WindowHands.menuShown());
        hands.click("End the log");
        RadioBench.await("ended", () -> ended.get() == 1);
    }
}
