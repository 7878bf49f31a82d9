package settlemark.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import settlemark.job.SettledBy;
import settlemark.measure.Dimension;
import settlemark.settle.JudgedChannel;
import settlemark.settle.PublishedRule;
import settlemark.settle.RuleWatch;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleEvent;
import settlemark.settle.SettleSettings;
import settlemark.settle.SettledTogether;

/** One trace while it is judged, row by row: its channels, and all of them at once. */
final class TraceRun {
    private static final double TIME_TOLERANCE_SECONDS = 1e-6;

    private final String source;
    private final SettleTable table;
    private final boolean explained;
    private final boolean kept;
    private final boolean emptyBreaks;
    private final List<Channel> channels = new ArrayList<>();
    private final SettledTogether together = new SettledTogether();
    private double lastSeconds = Double.NEGATIVE_INFINITY;

    /**
     * @param emptyBreaks whether an empty cell is a moment without a reading, else no sample of that channel
     * @param kept whether samples and events are kept for a picture
     */
    TraceRun(
            String source,
            List<ChannelColumn> columns,
            SettleChoices choices,
            SettledBy by,
            double resolution,
            boolean emptyBreaks,
            SettleTable table,
            boolean explained,
            boolean kept) {
        this.source = source;
        this.table = table;
        this.explained = explained;
        this.kept = kept;
        this.emptyBreaks = emptyBreaks;
        columns.forEach(c -> channels.add(new Channel(c, choices, by, resolution)));
    }

    /** A channel of the trace with all that is known of it. */
    final class Channel {
        final ChannelColumn column;
        final SettleSettings settings;
        final List<SettleEvent> events = new ArrayList<>();
        private final JudgedChannel judged;
        private double[] times = new double[64];
        private double[] values = new double[64];
        private int samples;
        private double originSeconds = Double.NaN;
        private long bin;

        private Channel(ChannelColumn column, SettleChoices choices, SettledBy by, double resolution) {
            this.column = column;
            this.settings = choices.settings(column.kind()).scaled(column.factor());
            boolean asked = by.rule()
                    .map(PublishedRule::dimension)
                    .filter(d -> d == column.unit().dimension())
                    .isPresent();
            if (asked) {
                double perFahrenheit = column.unit().dimension() == Dimension.TEMPERATURE ? column.factor() : 1;
                RuleWatch watch = new RuleWatch(by.rule().orElseThrow(), perFahrenheit, settings.gapSeconds());
                judged = JudgedChannel.byRule(settings, resolution, watch, by.alone(), this::told);
            } else {
                judged = JudgedChannel.byProof(settings, resolution, this::told);
            }
        }

        private void told(SettleEvent event) {
            table.event(source, column, settings.driftLimit(), event);
            if (kept) {
                events.add(event);
            }
        }

        private void accept(double seconds, double value) {
            judged.accept(seconds, value);
            if (kept) {
                keep(seconds, value);
            }
            if (explained) {
                explain(seconds);
            }
        }

        private void keep(double seconds, double value) {
            if (samples > 0 && seconds <= times[samples - 1]) {
                return;
            }
            if (samples == times.length) {
                times = Arrays.copyOf(times, 2 * samples);
                values = Arrays.copyOf(values, 2 * samples);
            }
            times[samples] = seconds;
            values[samples] = value;
            samples++;
        }

        /** The detector looks once a bin; its bins begin with the first sample. */
        private void explain(double seconds) {
            if (Double.isNaN(originSeconds)) {
                originSeconds = seconds;
            }
            long now = (long) Math.floor((seconds - originSeconds) / settings.binSeconds() + TIME_TOLERANCE_SECONDS);
            if (now > bin) {
                bin = now;
                table.state(source, seconds, column, settings.driftLimit(), judged);
            }
        }

        double[] times() {
            return Arrays.copyOf(times, samples);
        }

        double[] values() {
            return Arrays.copyOf(values, samples);
        }
    }

    void row(double seconds, double[] row) {
        for (int i = 0; i < row.length; i++) {
            if (emptyBreaks || !Double.isNaN(row[i])) {
                channels.get(i).accept(seconds, row[i]);
            }
        }
        if (channels.size() > 1 && seconds > lastSeconds) {
            lastSeconds = seconds;
            together(seconds);
        }
    }

    private void together(double seconds) {
        Channel mover =
                channels.stream().filter(c -> !c.judged.settled()).findFirst().orElse(null);
        boolean changed = mover == null
                ? together.see(seconds, "", "")
                : together.see(seconds, mover.column.column(), mover.judged.reason());
        if (changed) {
            boolean ready = together.standing() == SettledTogether.Standing.READY;
            table.together(source, seconds, ready, together.words());
        }
    }

    List<Channel> channels() {
        return List.copyOf(channels);
    }

    /** Samples of any channel that were ignored because they were not later than the one before. */
    long ignoredSamples() {
        return channels.stream().mapToLong(c -> c.judged.ignoredSamples()).sum();
    }
}
