package settlemark.session;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import settlemark.job.SettleForm;
import settlemark.measure.Channel;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleDetector;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** A channel of a bench while it runs, with a role or without: the last value, its detector, its last minute. */
final class BenchRun {
    private final int probe;
    private final Channel channel;
    private final @Nullable Role role;
    private final @Nullable SettleSettings settings;
    private final @Nullable SettleDetector detector;
    private final double[] lows = new double[Spark.COLUMNS];
    private final double[] highs = new double[Spark.COLUMNS];
    private long column;
    private long timeNanos = -1;
    private boolean settled;
    private long settledUntilNanos = -1;
    private double value = Double.NaN;
    private SampleStatus status = SampleStatus.NOT_READY;

    BenchRun(int probe, Channel channel, @Nullable Role role, SettleChoices choices) {
        this.probe = probe;
        this.channel = channel;
        this.role = role;
        this.settings = settings(channel, role, choices);
        this.detector = settings == null
                ? null
                : new SettleDetector(settings, channel.resolution(), event -> {
                    if (settled && !event.settled()) {
                        settledUntilNanos = Math.round(event.timeSeconds() * 1e9);
                    }
                    settled = event.settled();
                });
        Arrays.fill(lows, Double.NaN);
        Arrays.fill(highs, Double.NaN);
    }

    /** By its role, else by what it measures: pressures as gas, temperatures as air; others have none. */
    private static @Nullable SettleSettings settings(Channel channel, @Nullable Role role, SettleChoices choices) {
        if (role != null) {
            return SettleFit.settings(role, channel.unit(), choices);
        }
        SettleKind kind = channel.dimension() == Dimension.PRESSURE
                ? SettleKind.GAS
                : channel.dimension() == Dimension.TEMPERATURE ? SettleKind.AIR : null;
        return kind == null
                ? null
                : choices.settings(kind)
                        .scaled(Math.abs(
                                SettleForm.unit(kind).to(channel.unit()).slope()));
    }

    void sample(long at, double raw, SampleStatus says) {
        timeNanos = at;
        status = says;
        boolean measured = says == SampleStatus.OK && Double.isFinite(raw);
        value = measured ? raw : Double.NaN;
        if (measured) {
            int index = to(at);
            lows[index] = Double.isNaN(lows[index]) ? raw : Math.min(lows[index], raw);
            highs[index] = Double.isNaN(highs[index]) ? raw : Math.max(highs[index], raw);
        }
        if (detector != null && measured) {
            detector.accept(at / 1e9, raw);
        } else if (detector != null) {
            detector.interrupted(at / 1e9, says.name());
        }
    }

    /** What comes after a loss does not continue what came before. */
    void interrupted(long at, String why) {
        if (detector != null && timeNanos >= 0) {
            detector.interrupted(Math.max(at, timeNanos + 1) / 1e9, why);
        }
    }

    /** The place of a time in the ring; columns in between are emptied. */
    private int to(long at) {
        long wanted = Math.max(column, at / Spark.COLUMN_NANOS);
        for (long c = Math.max(column + 1, wanted - Spark.COLUMNS + 1); c <= wanted; c++) {
            lows[(int) (c % Spark.COLUMNS)] = Double.NaN;
            highs[(int) (c % Spark.COLUMNS)] = Double.NaN;
        }
        column = wanted;
        return (int) (wanted % Spark.COLUMNS);
    }

    BenchView.Row row(long nowNanos) {
        to(nowNanos);
        double[] low = new double[Spark.COLUMNS];
        double[] high = new double[Spark.COLUMNS];
        for (int i = 0; i < Spark.COLUMNS; i++) {
            int from = (int) ((column + 1 + i) % Spark.COLUMNS);
            low[i] = lows[from];
            high[i] = highs[from];
        }
        return new BenchView.Row(
                probe,
                channel,
                role,
                channel.unit(),
                value,
                status,
                timeNanos,
                ChannelRun.stale(nowNanos, timeNanos, channel.periodSeconds()),
                detector == null ? null : detector.state(),
                settings,
                settledUntilNanos,
                new Spark(low, high));
    }
}
