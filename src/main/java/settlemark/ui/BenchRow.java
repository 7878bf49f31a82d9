package settlemark.ui;

import java.awt.Font;
import java.awt.geom.Path2D;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.session.BenchView;
import settlemark.session.Spark;
import settlemark.settle.SettlePhase;

/** A channel in one low row: its name, value, unit, the gap between its posts, the state in a word, its last minute. */
final class BenchRow extends Painted {
    private static final double NAME = 0.28;
    private static final double VALUE = 0.16;
    private static final double UNIT = 0.09;
    private static final double GAP = 0.1;
    private static final double WORD = 0.19;

    /** Decimals where neither a limit nor a resolution says how many mean something. */
    private static final int USUAL_DECIMALS = 2;

    private BenchView.@Nullable Row row;
    private @Nullable Gap gap;
    private String name = "";
    private String value = "";
    private String word = "";
    private boolean selected;

    BenchRow(Look look) {
        super(look, AccessibleRole.LABEL);
    }

    /** @param digits whether the number may change now */
    void show(BenchView.Row newRow, long nowNanos, boolean chosen, boolean digits) {
        row = newRow;
        name = name(newRow);
        gap = gap(newRow, nowNanos).orElse(null);
        word = word(newRow, gap, nowNanos);
        if (digits || value.isEmpty() || chosen != selected) {
            value = newRow.timeNanos() < 0 ? "\u2013" : Numbers.fixed(newRow.value(), decimals(newRow));
        }
        selected = chosen;
        sentence(spoken(newRow, value, word));
        repaint();
    }

    static String name(BenchView.Row row) {
        return row.role()
                .map(r -> Numbers.capital(Words.told(r.word())))
                .orElse(row.channel().label());
    }

    static String spoken(BenchView.Row row, String value, String word) {
        return name(row) + " " + value + " " + Numbers.spoken(row.unit()) + ", " + word;
    }

    static java.util.Optional<Gap> gap(BenchView.Row row, long nowNanos) {
        return row.state() == null || row.settings() == null
                ? java.util.Optional.empty()
                : java.util.Optional.of(Gap.of(
                        row.state(), row.settings(), row.stale(), row.timeNanos(), row.settledUntilNanos(), nowNanos));
    }

    /** The state; where such a channel has none, whether it is heard. */
    static String word(BenchView.Row row, @Nullable Gap gap, long nowNanos) {
        if (row.timeNanos() >= 0 && !row.stale() && row.status() != SampleStatus.OK) {
            return status(row.status());
        }
        if (gap != null) {
            return gap.word();
        }
        return row.stale() || row.timeNanos() < 0 ? Gap.noData(row.timeNanos(), nowNanos) : Words.say("heard");
    }

    private static String status(SampleStatus status) {
        return switch (status) {
            case OK -> Words.say("heard");
            case OVER_RANGE -> Words.say("over range");
            case UNDER_RANGE -> Words.say("under range");
            case OPEN_CIRCUIT -> Words.say("open circuit");
            case NOT_READY -> Words.say("not ready");
            case FAULT -> Words.say("fault");
        };
    }

    static int decimals(BenchView.Row row) {
        if (row.settings() != null) {
            return Numbers.decimals(row.settings().driftLimit());
        }
        double resolution = row.channel().resolution();
        return resolution > 0 ? Numbers.decimals(resolution) : USUAL_DECIMALS;
    }

    String value() {
        return value;
    }

    @Override
    void draw(Pen pen) {
        BenchView.Row now = row;
        if (now == null) {
            return;
        }
        double width = getWidth();
        double high = getHeight();
        pen.fill(selected ? pen.theme().fold() : pen.theme().sheet(), 0, 0, width, high);
        boolean old = now.stale() || now.timeNanos() < 0;
        double baseline = high / 2 + look.px(5.2);
        double pad = look.px(8);
        double x = pad;
        pen.fit(name, look.regular(Look.BODY), pen.theme().ink(), x, baseline, width * NAME - pad);
        x = width * (NAME + VALUE);
        Font font = !old && gap != null && gap.settled() ? look.semiBold(Look.FOLDED) : look.regular(Look.FOLDED);
        digits(pen, font, old, x, baseline);
        x += look.px(5);
        pen.fit(now.unit().symbol(), look.regular(Look.AXIS), pen.theme().ink2(), x, baseline, width * UNIT - pad);
        x = width * (NAME + VALUE + UNIT);
        if (gap != null) {
            GapBar.Colors colors = new GapBar.Colors(
                    pen.theme().ink(),
                    pen.theme().rule(),
                    selected ? pen.theme().fold() : pen.theme().sheet());
            double bar = Math.min(look.px(14), high * 0.6);
            GapBar.draw(pen, gap, x, (high - bar) / 2, width * GAP - pad, bar, colors);
        }
        x += width * GAP;
        boolean bad = old || now.status() != SampleStatus.OK;
        pen.fit(
                word,
                bad ? look.semiBold(Look.AXIS) : look.regular(Look.AXIS),
                bad ? pen.theme().ink() : pen.theme().ink2(),
                x,
                baseline,
                width * WORD - pad);
        x += width * WORD;
        spark(pen, now.spark(), x, look.px(3), width - x - pad, high - look.px(6), old);
        pen.line(pen.theme().hair(), 1, 0, high - 0.5, width, high - 0.5);
        if (selected) {
            double ring = Look.FOCUS_RING;
            pen.outline(pen.theme().series().get(1), ring, Pen.box(0, 0, width, high, ring, Look.RADIUS));
        }
    }

    /** Each in a cell of the widest, so that a number stands still. */
    private void digits(Pen pen, Font font, boolean old, double right, double baseline) {
        pen.g.setFont(font);
        pen.g.setColor(old ? pen.theme().ink2() : pen.theme().ink());
        for (DigitField.Cell cell : DigitField.cells(value, look, font.getSize2D())) {
            String one = String.valueOf(cell.character());
            double left = right - cell.fromRight() - cell.width() + (cell.width() - Look.width(one, font)) / 2;
            pen.g.drawString(one, (float) left, (float) baseline);
        }
    }

    /** The least and the greatest of each half second, on the channel's own range but never finer than its limit. */
    static void spark(Pen pen, Spark spark, double x, double y, double width, double height, boolean old) {
        double low = spark.low();
        double high = spark.high();
        if (Double.isNaN(low)) {
            return;
        }
        double least = Math.max(Math.abs(high) * 1e-3, 1e-9);
        double spread = Math.max(high - low, least);
        double bottom = (low + high - spread) / 2;
        Path2D path = new Path2D.Double();
        boolean on = false;
        double step = width / Spark.COLUMNS;
        for (int i = 0; i < Spark.COLUMNS; i++) {
            if (Double.isNaN(spark.lows()[i])) {
                on = false;
                continue;
            }
            double at = x + (i + 0.5) * step;
            double from = y + height - (spark.lows()[i] - bottom) / spread * height;
            double to = y + height - (spark.highs()[i] - bottom) / spread * height;
            if (on) {
                path.lineTo(at, from);
            } else {
                path.moveTo(at, from);
            }
            path.lineTo(at, to);
            on = true;
        }
        pen.outline(old ? pen.theme().rule() : pen.theme().ink(), 1.3, path);
    }

    /** What a gap shows where a channel has no detector. */
    static SettlePhase phase(@Nullable Gap gap) {
        return gap == null ? SettlePhase.NO_DATA : gap.phase();
    }
}
