package settlemark.job;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import settlemark.measure.Unit;
import settlemark.settle.FromInstrument;

/**
 * What is known of an instrument by its serial number.
 *
 * @param serial as on its plate, 1 to 60 printable characters
 * @param name for people, may be empty
 * @param kind the profile that it speaks by, empty where it speaks to nobody
 * @param calibrated day of the last calibration
 * @param due day by which the next is due; not before the last
 * @param points of the certificate; none, or two at least of each channel and kind of unit
 */
public record InstrumentCard(
        String serial,
        String name,
        String kind,
        Optional<LocalDate> calibrated,
        Optional<LocalDate> due,
        List<CorrectionPoint> points) {
    private static final int LONGEST = 60;
    private static final int MOST_POINTS = 500;

    public InstrumentCard {
        serial = serial.strip();
        name = name.strip();
        kind = kind.strip();
        points = List.copyOf(points);
        if (serial.isEmpty() || serial.length() > LONGEST || !printable(serial)) {
            throw new IllegalArgumentException("a serial number has 1 to " + LONGEST + " printable characters, got \""
                    + shown(serial) + "\": copy it from the instrument");
        }
        if (name.length() > LONGEST || !printable(name) || kind.length() > LONGEST || !printable(kind)) {
            throw new IllegalArgumentException("instrument " + serial + ": its name and kind have at most " + LONGEST
                    + " printable characters, got \"" + shown(name) + "\" and \"" + shown(kind) + "\"");
        }
        if (calibrated.isPresent() && due.isPresent() && due.get().isBefore(calibrated.get())) {
            throw new IllegalArgumentException("instrument " + serial + ": it is due on " + due.get()
                    + ", before it was calibrated on " + calibrated.get() + ": one of the two days is wrong");
        }
        checkPoints(serial, points);
    }

    /** One of which nothing is known but that it measures. */
    public static InstrumentCard unknown(String serial, String name, String kind) {
        return new InstrumentCard(serial, name, kind, Optional.empty(), Optional.empty(), List.of());
    }

    private static boolean printable(String text) {
        return text.codePoints().noneMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT);
    }

    private static String shown(String text) {
        String cut = text.length() > LONGEST ? text.substring(0, LONGEST) + "..." : text;
        return cut.replaceAll("[\\p{Cc}\\p{Cf}]", "?");
    }

    private static void checkPoints(String serial, List<CorrectionPoint> points) {
        if (points.size() > MOST_POINTS) {
            throw new IllegalArgumentException("instrument " + serial + ": it has " + points.size()
                    + " correction points, at most " + MOST_POINTS);
        }
        for (CorrectionPoint point : points) {
            List<CorrectionPoint> curve = curve(points, point.channel(), point.unit());
            if (curve.size() < 2) {
                throw new IllegalArgumentException("instrument " + serial + ": " + of(point.channel())
                        + " has one correction point alone (" + point.indicated() + " "
                        + point.unit().symbol()
                        + "); between points takes two at least");
            }
            for (int i = 1; i < curve.size(); i++) {
                CorrectionPoint before = curve.get(i - 1);
                CorrectionPoint here = curve.get(i);
                if (here.indicated() == before.indicated()) {
                    throw new IllegalArgumentException("instrument " + serial + ": " + of(point.channel())
                            + " has two correction points where it indicates " + here.indicated() + " "
                            + here.unit().symbol() + "; leave one out, or put both into one");
                }
                if (here.trueValue() <= before.trueValue()) {
                    throw new IllegalArgumentException("instrument " + serial + ": " + of(point.channel())
                            + " would indicate more, " + here.indicated() + " "
                            + here.unit().symbol()
                            + ", where there is less, " + here.trueValue() + ": are true and indicated the other way"
                            + " around?");
                }
            }
        }
    }

    private static String of(String channel) {
        return channel.isEmpty() ? "every channel" : "channel " + channel;
    }

    /** In order of what is indicated, in the unit; empty where the channel has none of its own. */
    private static List<CorrectionPoint> curve(List<CorrectionPoint> points, String channel, Unit unit) {
        List<CorrectionPoint> curve = new ArrayList<>();
        for (CorrectionPoint point : points) {
            if (point.channel().equals(channel) && point.unit().dimension() == unit.dimension()) {
                curve.add(point.in(unit));
            }
        }
        curve.sort(Comparator.comparingDouble(CorrectionPoint::indicated));
        return curve;
    }

    public boolean overdue(LocalDate day) {
        return due.filter(day::isAfter).isPresent();
    }

    /** Channels that have points of their own, in order; an empty name stands for all others. */
    public List<String> channels() {
        TreeSet<String> channels = new TreeSet<>();
        points.forEach(p -> channels.add(p.channel()));
        return List.copyOf(channels);
    }

    /**
     * The correction where the instrument indicates a value: a straight line between the two points beside it. Its
     * uncertainty is that of the two in the same proportion, as one reference gave both and their errors may be the same
     * (JCGM 100:2008, 5.2.2, note 1). Outside the points there is none; within the outermost point's own uncertainty of it,
     * as with the noise about a zero, its correction holds.
     *
     * @param channel of the profile; its own points go before those for all channels
     * @param unit of the value and of what comes back
     */
    public FromInstrument at(String channel, Unit unit, double indicated) {
        Objects.requireNonNull(channel);
        List<CorrectionPoint> own = curve(points, channel, unit);
        List<CorrectionPoint> curve = own.isEmpty() ? curve(points, "", unit) : own;
        if (curve.isEmpty() || !Double.isFinite(indicated)) {
            return FromInstrument.uncorrected(serial, "");
        }
        double reached = inReach(curve, indicated);
        for (int i = 1; i < curve.size(); i++) {
            CorrectionPoint low = curve.get(i - 1);
            CorrectionPoint high = curve.get(i);
            if (low.indicated() <= reached && reached <= high.indicated()) {
                double part = (reached - low.indicated()) / (high.indicated() - low.indicated());
                double correction = low.correction() + part * (high.correction() - low.correction());
                double expanded =
                        low.expandedUncertainty() + part * (high.expandedUncertainty() - low.expandedUncertainty());
                return new FromInstrument(serial, correction, expanded / 2, "");
            }
        }
        return FromInstrument.uncorrected(serial, outside(curve, unit, indicated));
    }

    /** A value that misses the end of the points by no more than that point's uncertainty is at the end. */
    private static double inReach(List<CorrectionPoint> curve, double indicated) {
        CorrectionPoint first = curve.get(0);
        CorrectionPoint last = curve.get(curve.size() - 1);
        if (indicated < first.indicated() && first.indicated() - indicated <= first.expandedUncertainty()) {
            return first.indicated();
        }
        return indicated > last.indicated() && indicated - last.indicated() <= last.expandedUncertainty()
                ? last.indicated()
                : indicated;
    }

    private static String outside(List<CorrectionPoint> curve, Unit unit, double indicated) {
        return String.format(
                Locale.ROOT,
                "%.4g %s lies outside the correction points, %s to %s %s: not corrected",
                indicated,
                unit.symbol(),
                plain(curve.get(0).indicated()),
                plain(curve.get(curve.size() - 1).indicated()),
                unit.symbol());
    }

    private static String plain(double value) {
        return new BigDecimal(value)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }
}
