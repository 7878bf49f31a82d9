package settlemark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import settlemark.session.Span;

class LaneChartTest {
    private static final ChartTheme THEME = ChartTheme.LIGHT;
    private static final int WIDTH = 640;
    private static final int HEIGHT = 360;
    private static final Rectangle2D AREA = new Rectangle2D.Double(0, 0, WIDTH, HEIGHT);

    private static BufferedImage draw(LaneView view, double scale) {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        new LaneChart(THEME, scale).draw(g, AREA, view);
        g.dispose();
        return image;
    }

    private static LaneView one(double[] values, Lane.SettledSpan... spans) {
        long[] times = new long[values.length];
        Arrays.setAll(times, i -> i * Scene.SECOND);
        Lane.TraceLine line = new Lane.TraceLine("", "", LineStyle.ALONE, times, values, 3 * Scene.SECOND);
        Lane lane = Lane.of("", new ValueRange(0, 10), List.of(line)).withSpans(List.of(spans));
        return new LaneView(0, (values.length - 1) * Scene.SECOND, -1, new TimeLabels.Since(0), List.of(lane), false);
    }

    private static boolean near(int rgb, Color color) {
        Color c = new Color(rgb);
        return Math.abs(c.getRed() - color.getRed())
                        + Math.abs(c.getGreen() - color.getGreen())
                        + Math.abs(c.getBlue() - color.getBlue())
                < 24;
    }

    private static int count(BufferedImage image, double fromX, double toX, Color color) {
        int count = 0;
        for (int x = (int) Math.ceil(fromX); x < toX; x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                count += near(image.getRGB(x, y), color) ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void aGapIsNeverBridgedAndIsHatched() {
        double[] values = new double[101];
        Arrays.setAll(values, i -> i > 40 && i < 60 ? Double.NaN : 5);
        LaneView view = one(values);
        BufferedImage image = draw(view, 1);
        Rectangle2D data = new LaneChart(THEME, 1).dataArea(AREA, view, 0);
        double perSecond = data.getWidth() / 100;
        Color series = THEME.series().get(1);
        assertThat(count(image, data.getX() + 41 * perSecond, data.getX() + 59 * perSecond, series))
                .isZero();
        assertThat(count(image, data.getX() + 30 * perSecond, data.getX() + 39 * perSecond, series))
                .isPositive();
        BufferedImage whole = draw(one(Arrays.copyOf(filled(), 101)), 1);
        assertThat(different(image, whole, data.getX() + 41 * perSecond, data.getX() + 44 * perSecond))
                .as("hatch at the gap's edge")
                .isPositive();
        assertThat(count(whole, data.getX() + 41 * perSecond, data.getX() + 59 * perSecond, series))
                .as("the same stretch without a gap is drawn")
                .isPositive();
        assertThat(notWhite(image, data.getX() + 41 * perSecond, data.getX() + 44 * perSecond))
                .as("hatched pixels")
                .isPositive();
    }

    private static double[] filled() {
        double[] values = new double[101];
        Arrays.fill(values, 5);
        return values;
    }

    private static int notWhite(BufferedImage image, double fromX, double toX) {
        int count = 0;
        for (int x = (int) Math.ceil(fromX); x < toX; x++) {
            for (int y = 0; y < HEIGHT - 30; y++) {
                count += (image.getRGB(x, y) & 0xFFFFFF) == 0xFFFFFF ? 0 : 1;
            }
        }
        return count;
    }

    private static int different(BufferedImage a, BufferedImage b, double fromX, double toX) {
        int count = 0;
        for (int x = (int) Math.ceil(fromX); x < toX; x++) {
            for (int y = 0; y < HEIGHT; y++) {
                count += a.getRGB(x, y) == b.getRGB(x, y) ? 0 : 1;
            }
        }
        return count;
    }

    @Test
    void aSpikeOfOneSampleReachesItsPixel() {
        double[] values = new double[20_001];
        Arrays.fill(values, 2);
        values[10_000] = 9;
        LaneView view = one(values);
        BufferedImage image = draw(view, 1);
        Rectangle2D data = new LaneChart(THEME, 1).dataArea(AREA, view, 0);
        int y = (int) Math.round(data.getMaxY() - data.getHeight() * 0.7);
        int x = (int) Math.round(data.getCenterX());
        boolean seen = false;
        for (int dx = -3; dx <= 3; dx++) {
            seen |= near(image.getRGB(x + dx, y), THEME.series().get(1));
        }
        assertThat(seen).isTrue();
    }

    @Test
    void theDataAreaIsWhereTheTraceIs() {
        LaneView view = one(filled());
        BufferedImage image = draw(view, 1);
        Rectangle2D data = new LaneChart(THEME, 1).dataArea(AREA, view, 0);
        int y = (int) data.getCenterY();
        assertThat(near(image.getRGB((int) data.getX() + 1, y), THEME.series().get(1)))
                .isTrue();
        assertThat(near(
                        image.getRGB((int) data.getMaxX() - 2, y),
                        THEME.series().get(1)))
                .isTrue();
        assertThat(near(image.getRGB((int) data.getX() - 9, y), THEME.series().get(1)))
                .isFalse();
    }

    @Test
    void aSettledSpanIsShadedUnderItsStaple() {
        Span span = new Span(60 * Scene.SECOND, 90 * Scene.SECOND);
        LaneView view = one(filled(), new Lane.SettledSpan(0, span));
        BufferedImage image = draw(view, 1);
        Rectangle2D data = new LaneChart(THEME, 1).dataArea(AREA, view, 0);
        double perSecond = data.getWidth() / 100;
        assertThat(count(image, data.getX() + 61 * perSecond, data.getX() + 89 * perSecond, THEME.settled()))
                .isGreaterThan(1000);
        assertThat(count(image, data.getX() + 61 * perSecond, data.getX() + 89 * perSecond, THEME.ink()))
                .as("the bar")
                .isPositive();
        assertThat(count(image, data.getX() + 10 * perSecond, data.getX() + 59 * perSecond, THEME.settled()))
                .as("no more than the soft edge of the line")
                .isLessThan(40);
    }

    @Test
    void whatIsSimulatedWearsTheRibbonAndWhatIsRealDoesNot() {
        int top = (int) Layout.RIBBON_PX;
        BufferedImage simulated = draw(Scene.atWork(true), 1).getSubimage(0, 0, WIDTH, top);
        BufferedImage real = draw(Scene.atWork(false), 1).getSubimage(0, 0, WIDTH, top);
        assertThat(dark(simulated)).isGreaterThan(500);
        assertThat(dark(real)).isLessThan(100);
    }

    private static int dark(BufferedImage image) {
        int count = 0;
        for (int x = 60; x < WIDTH - 6; x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                count += ChartTheme.contrast(new Color(image.getRGB(x, y)), Color.WHITE) > 4 ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void nothingFailsAtAwkwardSizes() {
        for (double scale : new double[] {0.6, 1, 2.5}) {
            for (int side : new int[] {1, 8, 40, 120}) {
                BufferedImage image = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
                Graphics2D g = image.createGraphics();
                new LaneChart(THEME, scale).draw(g, new Rectangle2D.Double(0, 0, side, side), Scene.atWork(true));
                new LaneChart(THEME, scale).draw(g, new Rectangle2D.Double(0, 0, side, side), Scene.adjusting());
                g.dispose();
                assertThat(image.getRGB(0, 0)).isNotEqualTo(0xFF000000);
            }
        }
    }

    /** In a low lane the words of a limit, of which the number stands elsewhere too, make room for the target's. */
    @Test
    void limitsGiveWayToTheTarget() {
        for (int height : new int[] {90, 110, 140, 200, 360}) {
            List<Rectangle2D> places = new ArrayList<>();
            BufferedImage image = new BufferedImage(WIDTH, height, BufferedImage.TYPE_INT_RGB);
            Graphics2D g = image.createGraphics();
            Rectangle2D area = new Rectangle2D.Double(0, 0, WIDTH, height);
            Pen pen = new Pen(g, THEME, 1);
            LaneView view = Scene.adjusting();
            Rectangle2D data = new LaneChart(THEME, 1).dataArea(area, view, 0);
            LaneCanvas canvas = new LaneCanvas(pen, view.lanes().get(0), view, data, List.of(Thinned.empty()));
            new BackLayer(canvas).draw();
            places.addAll(canvas.taken());
            g.dispose();
            assertThat(places).as("the target at least").isNotEmpty();
            for (int i = 0; i < places.size(); i++) {
                for (int k = i + 1; k < places.size(); k++) {
                    assertThat(places.get(i).intersects(places.get(k)))
                            .as("height " + height)
                            .isFalse();
                }
            }
            assertThat(places).hasSize(height >= 200 ? 3 : places.size());
        }
    }

    /** With so many samples the lanes are drawn at the same time. */
    @Test
    void lanesThatAreDrawnTogetherAreThoseDrawnOneAfterTheOther() {
        long[] times = new long[150_000];
        Arrays.setAll(times, i -> Scene.FROM + i * ((Scene.NOW - Scene.FROM) / times.length));
        double[] values = new double[times.length];
        java.util.Random random = new java.util.Random(9);
        Arrays.setAll(values, i -> 6 + 0.1 * random.nextGaussian());
        double[] warm = Arrays.stream(values).map(v -> 90 + v).toArray();
        Lane.TraceLine many =
                new Lane.TraceLine("many", "a note", LineStyle.ANSWERING, times, values, 5 * Scene.SECOND);
        Lane.TraceLine others = new Lane.TraceLine("others", "", LineStyle.THIRD, times, warm, 5 * Scene.SECOND);
        Lane above = Lane.of("inH\u2082O", new ValueRange(-0.5, 9), List.of(many))
                .withSpans(List.of(new Lane.SettledSpan(0, new Span(Scene.FROM + 40 * Scene.SECOND, Scene.NOW))))
                .withEvents(List.of(new Lane.EventMark(0, 2310 * Scene.SECOND, "cap on")));
        Lane below = Lane.of("\u00b0F", new ValueRange(55, 138), List.of(others))
                .withBands(List.of(new Lane.Band(80, 130, "80", "130, plate")));
        LaneView view = new LaneView(Scene.FROM, Scene.NOW, Scene.NOW, Scene.CLOCK, List.of(above, below, below), true);
        for (double scale : new double[] {1, 1.5}) {
            BufferedImage after = draw(view, scale);
            BufferedImage together = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
            new LaneChart(THEME, scale).draw(together, 1, AREA, view);
            assertThat(together.getRGB(0, 0, WIDTH, HEIGHT, null, 0, WIDTH))
                    .isEqualTo(after.getRGB(0, 0, WIDTH, HEIGHT, null, 0, WIDTH));
        }
    }

    @Test
    void marksAreToldApartInGrey() {
        Set<String> seen = new HashSet<>();
        for (Mark mark : Mark.values()) {
            BufferedImage image = new BufferedImage(24, 24, BufferedImage.TYPE_BYTE_GRAY);
            Graphics2D g = image.createGraphics();
            g.setColor(Color.WHITE);
            g.fillRect(0, 0, 24, 24);
            mark.draw(g, 2, 2, 20, THEME);
            g.dispose();
            StringBuilder shape = new StringBuilder();
            int dark = 0;
            for (int i = 0; i < 24 * 24; i++) {
                boolean black = image.getRaster().getSample(i % 24, i / 24, 0) < 150;
                shape.append(black ? '#' : '.');
                dark += black ? 1 : 0;
            }
            assertThat(dark).as(mark.name()).isGreaterThan(20);
            assertThat(seen.add(shape.toString())).as(mark.name()).isTrue();
        }
    }

    @Test
    void dashesStayApartInNoise() {
        double[] values = new double[3001];
        java.util.Random random = new java.util.Random(7);
        System.out.println("seed 7");
        Arrays.setAll(values, i -> 5 + 0.15 * random.nextGaussian());
        long[] times = new long[values.length];
        Arrays.setAll(times, i -> i * Scene.SECOND / 10);
        Lane.TraceLine line = new Lane.TraceLine("", "", LineStyle.ANSWERING, times, values, 3 * Scene.SECOND);
        Lane lane = Lane.of("", new ValueRange(0, 10), List.of(line));
        LaneView view = new LaneView(0, 300 * Scene.SECOND, -1, new TimeLabels.Since(0), List.of(lane), false);
        BufferedImage image = draw(view, 1);
        Rectangle2D data = new LaneChart(THEME, 1).dataArea(AREA, view, 0);
        int empty = 0;
        for (int x = (int) data.getX() + 1; x < data.getMaxX() - 1; x++) {
            empty += count(image, x, x + 1, THEME.series().get(1)) == 0 ? 1 : 0;
        }
        // Dash 10-3: three pixels in thirteen are left out, less what the noise adds to the course.
        assertThat(empty / data.getWidth()).isBetween(0.1, 0.3);
    }
}
