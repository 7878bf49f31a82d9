package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.session.BenchView;
import settlemark.settle.SettlePhase;

/** A channel in one low row: its name, value, unit, the gap between its posts, the state in a word, its last minute. */
final class BenchRow extends Painted {
    private static final double NAME = 0.28;
    private static final double VALUE = 0.16;
    private static final double UNIT = 0.09;
    private static final double GAP = 0.1;
    private static final double WORD = 0.19;
    private static final double PAD = 8;

    /** Decimals where neither a limit nor a resolution says how many mean something. */
    private static final int USUAL_DECIMALS = 2;

    private BenchView.@Nullable Row row;
    private @Nullable Gap gap;
    private @Nullable Gap drawnGap;
    private String name = "";
    private String value = "";
    private String word = "";
    private boolean selected;
    private final transient SparkLine line = new SparkLine(false);
    private @Nullable Beside shown;

    /** What stands beside the line of the last minute. */
    private record Beside(
            String name, String value, String word, boolean old, boolean bad, boolean chosen, Unit unit) {}

    BenchRow(Look look) {
        super(look, AccessibleRole.LABEL);
        setOpaque(true);
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
        Beside now = new Beside(name, value, word, old(newRow), bad(newRow), chosen, newRow.unit());
        int from = line.show(newRow.spark());
        if (!now.equals(shown)) {
            shown = now;
            drawnGap = gap;
            repaint();
        } else {
            if (!alike(drawnGap, gap)) {
                drawnGap = gap;
                repaint(gapBox().getBounds());
            }
            if (from < newRow.spark().lows().length) {
                repaint(SparkLine.dirty(sparkBox(), from));
            }
        }
    }

    /** Whether two gaps are the same bar to half a pixel. */
    private boolean alike(@Nullable Gap one, @Nullable Gap other) {
        if (one == null || other == null) {
            return one == other;
        }
        double track = getWidth() * GAP;
        return one.phase() == other.phase()
                && Math.abs(one.filled() - other.filled()) * track < 0.5
                && (Double.compare(one.ratio(), other.ratio()) == 0
                        || Math.abs(one.ratio() - other.ratio()) * track / 4 < 0.5);
    }

    private static boolean old(BenchView.Row row) {
        return row.stale() || row.timeNanos() < 0;
    }

    private static boolean bad(BenchView.Row row) {
        return old(row) || row.status() != SampleStatus.OK;
    }

    private Rectangle2D gapBox() {
        double left = getWidth() * (NAME + VALUE + UNIT);
        return new Rectangle2D.Double(left - 2, 0, getWidth() * GAP - look.px(PAD) + 4, getHeight());
    }

    private Rectangle2D sparkBox() {
        double left = getWidth() * (NAME + VALUE + UNIT + GAP + WORD);
        return new Rectangle2D.Double(
                left, look.px(3), getWidth() - left - look.px(PAD), Math.max(1, getHeight() - look.px(6)));
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
        if (pen.g.hitClip(0, 0, (int) gapBox().getX(), getHeight())) {
            value(pen, now, high / 2 + look.px(5.2));
        }
        if (gap != null && pen.touches(gapBox())) {
            gap(pen, gap, high);
        }
        double x = width * (NAME + VALUE + UNIT + GAP);
        if (pen.touches(new Rectangle2D.Double(x, 0, width * WORD, high))) {
            Font font = bad(now) ? look.semiBold(Look.AXIS) : look.regular(Look.AXIS);
            Color color = bad(now) ? pen.theme().ink() : pen.theme().ink2();
            pen.fit(word, font, color, x, high / 2 + look.px(5.2), width * WORD - look.px(PAD));
        }
        if (pen.touches(SparkLine.dirty(sparkBox(), 0))) {
            line.draw(
                    pen, sparkBox(), old(now) ? pen.theme().rule() : pen.theme().ink());
        }
        pen.fill(pen.theme().hair(), 0, high - 1, width, 1);
        if (selected) {
            double ring = Look.FOCUS_RING;
            pen.outline(pen.theme().series().get(1), ring, Pen.box(0, 0, width, high, ring, Look.RADIUS));
        }
    }

    private void value(Pen pen, BenchView.Row now, double baseline) {
        double width = getWidth();
        double pad = look.px(PAD);
        pen.fit(name, look.regular(Look.BODY), pen.theme().ink(), pad, baseline, width * NAME - pad);
        double x = width * (NAME + VALUE);
        boolean settled = !old(now) && gap != null && gap.settled();
        Font font = settled ? look.semiBold(Look.FOLDED) : look.regular(Look.FOLDED);
        digits(pen, font, old(now), x, baseline);
        Font small = look.regular(Look.AXIS);
        pen.fit(now.unit().symbol(), small, pen.theme().ink2(), x + look.px(5), baseline, width * UNIT - pad);
    }

    private void gap(Pen pen, Gap shownGap, double high) {
        GapBar.Colors colors = new GapBar.Colors(
                pen.theme().ink(),
                pen.theme().rule(),
                selected ? pen.theme().fold() : pen.theme().sheet());
        double bar = Math.min(look.px(14), high * 0.6);
        double x = getWidth() * (NAME + VALUE + UNIT);
        GapBar.draw(pen, shownGap, x, (high - bar) / 2, getWidth() * GAP - look.px(PAD), bar, colors);
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

    /** What a gap shows where a channel has no detector. */
    static SettlePhase phase(@Nullable Gap gap) {
        return gap == null ? SettlePhase.NO_DATA : gap.phase();
    }
}
