package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import settlemark.measure.Unit;

/**
 * What looks wrong on a plate as it was copied. Every figure here is common practice or follows from how an orifice
 * flows; the plate itself wins, so a doubt is said and refuses nothing.
 */
final class PlateDoubts {
    /** Manifold and inlet above which natural gas is unusual, and below which propane is, inches of water. */
    private static final double BETWEEN_MANIFOLDS = 6;

    private static final double BETWEEN_INLETS = 10.8;
    /** The input of two stages goes as the root of their manifold pressures; more than this apart is said. */
    private static final double ROOT_APART = 0.15;

    private final RatingPlate plate;
    private final List<String> said = new ArrayList<>();

    private PlateDoubts(RatingPlate plate) {
        this.plate = plate;
    }

    static List<String> of(RatingPlate plate) {
        PlateDoubts doubts = new PlateDoubts(plate);
        for (int i = 1; i < plate.stages().size(); i++) {
            doubts.between(plate.stages().get(i - 1), plate.stages().get(i));
        }
        plate.stages().forEach(doubts::fuel);
        doubts.inlet();
        doubts.rise();
        doubts.control();
        doubts.site();
        return List.copyOf(doubts.said);
    }

    private void between(StagePlate lower, StagePlate upper) {
        double low = lower.unit().to(upper.unit()).apply(lower.manifoldTarget());
        double high = upper.manifoldTarget();
        String unit = upper.unit().symbol();
        if (low > high) {
            say(
                    "%s has %.2f %s and %s only %.2f %s: the lower stage stands above the higher. Are they exchanged?",
                    lower.name(), low, unit, upper.name(), high, unit);
            return;
        }
        double rates = lower.inputBtuPerHour() / upper.inputBtuPerHour();
        double roots = Math.sqrt(low / high);
        if (rates > 1) {
            say("%s has more input than %s. Are they exchanged?", lower.name(), upper.name());
        } else if (Math.abs(roots / rates - 1) > ROOT_APART) {
            say(
                    "The inputs of %s and %s stand as %.2f, the roots of their manifold pressures as %.2f: one orifice"
                            + " gives input as the root of the pressure. Look at the four figures again.",
                    lower.name(), upper.name(), rates, roots);
        }
    }

    private void fuel(StagePlate stage) {
        double manifold = stage.unit().to(Unit.INCH_OF_WATER).apply(stage.manifoldTarget());
        boolean highest = stage == plate.stages().get(plate.stages().size() - 1);
        if (plate.fuel() == Fuel.NATURAL_GAS && manifold > BETWEEN_MANIFOLDS) {
            say(
                    "A manifold of %.2f inH2O at %s is one of propane, and the plate says natural gas.",
                    manifold, stage.name());
        } else if (plate.fuel() == Fuel.PROPANE && highest && manifold < BETWEEN_MANIFOLDS) {
            say(
                    "A manifold of %.2f inH2O at %s is one of natural gas, and the plate says propane.",
                    manifold, stage.name());
        }
    }

    private void inlet() {
        Limit inlet = plate.inlet().to(Unit.INCH_OF_WATER);
        if (plate.fuel() == Fuel.NATURAL_GAS && Double.isFinite(inlet.lower()) && inlet.lower() >= BETWEEN_INLETS) {
            say("A least inlet of %.2f inH2O is one of propane, and the plate says natural gas.", inlet.lower());
        } else if (plate.fuel() == Fuel.PROPANE && inlet.upper() < BETWEEN_INLETS) {
            say("A greatest inlet of %.2f inH2O is one of natural gas, and the plate says propane.", inlet.upper());
        }
        for (StagePlate stage : plate.stages()) {
            double manifold = stage.unit().to(Unit.INCH_OF_WATER).apply(stage.manifoldTarget());
            if (manifold >= inlet.lower()) {
                say(
                        "The least inlet, %.2f inH2O, is not above the manifold of %s, %.2f inH2O: a valve only takes away.",
                        inlet.lower(), stage.name(), manifold);
            }
        }
    }

    private void rise() {
        Limit rise = plate.rise();
        if (!rise.isOpen() && rise.lower() == rise.upper()) {
            say("The rise range has no width: the plate names two figures.");
        }
        if (!rise.isOpen() && rise.lower() < 0) {
            say("The rise range begins below nothing: a burner warms the air.");
        }
    }

    private void control() {
        Limit control = plate.control().to(Unit.INCH_OF_WATER);
        Limit inlet = plate.inlet().to(Unit.INCH_OF_WATER);
        if (!control.isOpen() && control.upper() < inlet.upper()) {
            say(
                    "The gas control takes %.2f inH2O at most, the plate allows %.2f: the lower one counts.",
                    control.upper(), inlet.upper());
        }
    }

    private void site() {
        Site site = plate.site();
        if (site.known() && site.altitudeFeet() > Site.FREE_FEET && site.derating() == Site.Derating.NONE) {
            say(
                    "%.0f ft above sea level and no derating: only where the plate or the maker says so.",
                    site.altitudeFeet());
        }
    }

    private void say(String format, Object... figures) {
        said.add(String.format(Locale.ROOT, format, figures));
    }
}
