package settlemark.cli;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import settlemark.chart.ChartTheme;
import settlemark.chart.SettlePicture;
import settlemark.settle.SettleEvent;

/** Writes the picture of a judged trace. */
final class SettlePlot {
    private static final int WIDTH_PX = 1200;
    /** Times beyond this are a clock's, and are counted from the first sample. */
    private static final double CLOCK_SECONDS = 1e6;

    private static final double PERIODS_IN_GAP = 4;

    private SettlePlot() {}

    /** @throws IOException also where there is nothing to draw */
    static void write(Path file, String title, TraceRun run) throws IOException {
        List<TraceRun.Channel> drawn =
                run.channels().stream().filter(c -> c.times().length > 0).toList();
        if (drawn.isEmpty()) {
            throw new IOException("no picture was made of " + title + ": it has no samples");
        }
        double first = drawn.stream().mapToDouble(c -> c.times()[0]).min().orElseThrow();
        double origin = Math.abs(first) > CLOCK_SECONDS ? first : 0;
        String words = origin == 0 ? title : title + ", since " + CsvRows.time(origin) + " s";
        List<SettlePicture.Plotted> channels =
                drawn.stream().map(c -> plotted(c, origin)).toList();
        SettlePicture picture = new SettlePicture(words, channels, WIDTH_PX);
        BufferedImage image =
                new BufferedImage(WIDTH_PX, (int) Math.ceil(picture.heightPx()), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        picture.draw(graphics, ChartTheme.LIGHT);
        graphics.dispose();
        if (!ImageIO.write(image, "png", file.toFile())) {
            throw new IOException("this Java cannot write PNG pictures");
        }
    }

    private static long nanos(double seconds, double origin) {
        return Math.round((seconds - origin) * 1e9);
    }

    private static SettlePicture.Plotted plotted(TraceRun.Channel channel, double origin) {
        double[] times = channel.times();
        long[] nanos = Arrays.stream(times).mapToLong(t -> nanos(t, origin)).toArray();
        String unit = channel.column.unit().symbol();
        int decimals = CsvRows.decimals(channel.settings.driftLimit()) - 2;
        List<SettlePicture.Change> changes = new ArrayList<>();
        for (SettleEvent event : channel.events) {
            String words = event.settled()
                    ? CsvRows.number(event.value(), decimals) + " ±" + CsvRows.number(event.uncertainty(), decimals)
                            + " " + unit
                    : "";
            changes.add(new SettlePicture.Change(
                    nanos(event.timeSeconds(), origin),
                    CsvRows.number(event.timeSeconds() - origin, 1),
                    event.settled(),
                    event.value(),
                    words,
                    event.reason()));
        }
        return new SettlePicture.Plotted(
                channel.column.column(),
                unit,
                channel.settings.driftLimit(),
                nanos,
                channel.values(),
                longestStep(times, channel.settings.gapSeconds()),
                changes);
    }

    private static long longestStep(double[] times, double gapSeconds) {
        double[] steps = new double[times.length];
        for (int i = 1; i < times.length; i++) {
            steps[i] = times[i] - times[i - 1];
        }
        Arrays.sort(steps);
        return Math.round(Math.max(gapSeconds, PERIODS_IN_GAP * steps[steps.length / 2]) * 1e9);
    }
}
