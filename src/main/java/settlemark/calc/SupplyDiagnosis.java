package settlemark.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import settlemark.calc.SupplyFinding.Cause;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/**
 * Tells a drooping regulator, pipe friction and a choked cock apart as far as the readings allow.
 *
 * <p>The drop from the low to the high stage grows with the gas rate to a power between 1 (droop) and 2 (a cock; a pipe
 * 1.85). That power alone decides nothing. If the drop belongs to what all loads share, another load's step must sag the
 * inlet by what that power range foretells; if it sags far less, the drop belongs to this branch. Pipe and regulator are
 * told apart only by a gauge at the meter's outlet. The regulator's own step from lock-up to first flow says nothing of
 * either.
 */
public final class SupplyDiagnosis {
    private static final Unit WATER = Unit.INCH_OF_WATER;
    private static final double DROOP = 1;
    private static final double COCK = 2;
    /** Drop from low to high that any sound supply may show, inH2O. Common practice, without a source. */
    private static final double USUAL = 0.3;
    /** How far a lock-up may lie from the expected one, inH2O. Common practice, without a source. */
    private static final double LOCK_UP_WITHIN = 1;
    /** Share of the foretold sag below which the drop is not shared. */
    private static final double NOT_SHARED = 0.5;

    private final SupplyReadings readings;

    private SupplyDiagnosis(SupplyReadings readings) {
        this.readings = readings;
    }

    /** What the readings say; never empty. */
    public static List<SupplyFinding> of(SupplyReadings readings) {
        return new SupplyDiagnosis(readings).findings();
    }

    private List<SupplyFinding> findings() {
        List<SupplyFinding> found = new ArrayList<>();
        atRest(found);
        double drop = water(readings.low()) - water(readings.high());
        double uncertain = 2 * Math.hypot(spread(readings.low()), spread(readings.high()));
        if (drop > Math.max(USUAL, uncertain)) {
            found.add(place(drop));
        }
        if (found.isEmpty()) {
            found.add(new SupplyFinding(
                    Cause.NOTHING_SEEN,
                    said("%.2f inH2O from low to high stage, U = %.2f inH2O", drop, uncertain),
                    "read it with all appliances firing"));
        }
        return found;
    }

    private void atRest(List<SupplyFinding> found) {
        readings.expected().ifPresent(expected -> {
            double apart = water(readings.lockUp()) - water(expected);
            double within = LOCK_UP_WITHIN + 2 * spread(readings.lockUp());
            if (apart < -within) {
                found.add(new SupplyFinding(
                        Cause.SET_LOW,
                        said("%.2f inH2O below the expected lock-up with nothing firing", -apart),
                        "a gauge at the meter's outlet; the supplier, where the regulator is the supplier's"));
            } else if (apart > within) {
                found.add(new SupplyFinding(
                        Cause.HIGH_LOCK_UP,
                        said("%.2f inH2O above the expected lock-up with nothing firing", apart),
                        "watch it for 10 minutes: where it climbs, the regulator does not lock up, shut off"));
            }
        });
    }

    private SupplyFinding place(double drop) {
        if (readings.atMeter().isPresent()) {
            return byMeter(readings.atMeter().get(), drop);
        }
        return readings.others()
                .map(others -> byEvent(others, drop))
                .orElseGet(() -> new SupplyFinding(
                        Cause.CANNOT_TELL,
                        said(
                                "%.2f inH2O from low to high stage; the ratio of the drops does not tell what it is",
                                drop),
                        "light another load and see whether the inlet sags; a gauge at the meter's outlet"));
    }

    /** How the whole drop is shared between regulator and pipe, the lock-up step counted with the regulator. */
    private SupplyFinding byMeter(SupplyReadings.AtMeter meter, double drop) {
        double whole = water(readings.lockUp()) - water(readings.high());
        double regulator = water(meter.lockUp()) - water(meter.high());
        String reason = said(
                "of %.2f inH2O between lock-up and high stage %.2f inH2O lie at the meter's outlet", whole, regulator);
        if (regulator > whole - regulator) {
            return new SupplyFinding(Cause.REGULATOR, reason, "all loads on, at the meter's outlet; the supplier");
        }
        boolean branch = readings.others()
                .map(others -> byEvent(others, drop).cause() == Cause.BRANCH)
                .orElse(false);
        if (branch) {
            return new SupplyFinding(Cause.BRANCH, reason + "; another load barely sags the inlet", BRANCH_CONFIRM);
        }
        return readings.others().isPresent()
                ? new SupplyFinding(Cause.PIPE, reason, "length, diameter and all loads against the pipe's capacity")
                : new SupplyFinding(
                        Cause.CANNOT_TELL,
                        reason + ": pipe or something on this branch",
                        "light another load, see the inlet");
    }

    private static final String BRANCH_CONFIRM =
            "a gauge on each side of the cock, connector and strainer; gas off before anything is opened";

    private SupplyFinding byEvent(SupplyReadings.Others others, double drop) {
        double sag = water(readings.high()) - water(others.inlet());
        double uncertain = 2 * Math.hypot(spread(readings.high()), spread(others.inlet()));
        double least = foretold(others, drop, DROOP);
        double most = foretold(others, drop, COCK);
        String reason = said(
                "another load sags the inlet by %.2f inH2O (U = %.2f inH2O); %.2f to %.2f inH2O if the drop from low to high were shared",
                sag, uncertain, least, most);
        if (sag + uncertain < NOT_SHARED * least) {
            return new SupplyFinding(Cause.BRANCH, reason, BRANCH_CONFIRM);
        }
        if (sag - uncertain > NOT_SHARED * least) {
            return new SupplyFinding(
                    Cause.SHARED, reason + ": pipe or regulator", "a gauge at the meter's outlet with all loads on");
        }
        return new SupplyFinding(Cause.CANNOT_TELL, reason, "a larger other load, or gauges with less uncertainty");
    }

    /** Sag that another load would give if the drop between the stages followed this power of the whole gas rate. */
    private double foretold(SupplyReadings.Others others, double drop, double power) {
        Unit unit = readings.lowFlow().unit();
        double low = readings.lowFlow().value();
        double high = readings.highFlow().to(unit).value();
        double all = high + others.flow().to(unit).value();
        return drop * (Math.pow(all, power) - Math.pow(high, power)) / (Math.pow(high, power) - Math.pow(low, power));
    }

    private static double water(Quantity pressure) {
        return pressure.to(WATER).value();
    }

    private static double spread(Quantity pressure) {
        return pressure.to(WATER).standardUncertainty();
    }

    private static String said(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }
}
