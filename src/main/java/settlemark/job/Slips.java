package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * Slips of the work that a reading shows: another unit, another gas, nothing firing where something should, a valve that is
 * wide open. Each is a question beside the verdict and changes none. The figures are common practice.
 */
final class Slips {
    private static final Unit MILLIBAR = Unit.ucum("mbar");
    /** Inlets between these are propane's, inches of water. */
    private static final double PROPANE_FROM = 10.8;

    private static final double PROPANE_TO = 14;
    /** A valve needs so much more at its inlet than it gives, inches of water. */
    private static final double ROOM = 0.75;

    private Slips() {}

    /** @param steps of the job, with what was read before */
    static List<String> words(StepRun run, StageReading reading, List<StepRun> steps, RatingPlate plate) {
        List<String> words = new ArrayList<>();
        Optional<ChannelReading> inlet = reading.channel(Role.INLET).filter(c -> Double.isFinite(c.value()));
        if (inlet.isEmpty()) {
            return words;
        }
        switch (run.step.kind()) {
            case LOCK_UP -> atRest(inlet.get(), plate, words);
            case THIS_APPLIANCE ->
                fallen(inlet.get(), steps, StepKind.LOCK_UP, words, "as at lock-up: is this appliance firing?");
            case ALL_APPLIANCES ->
                fallen(
                        inlet.get(),
                        steps,
                        StepKind.THIS_APPLIANCE,
                        words,
                        "as with this appliance alone: are the others firing?");
            case FOUND, LEFT ->
                reading.channel(Role.MANIFOLD)
                        .ifPresent(m -> wideOpen(inlet.get(), m, plate.stage(run.step.stage()), words));
            default -> {}
        }
        return words;
    }

    private static void atRest(ChannelReading inlet, RatingPlate plate, List<String> words) {
        Limit limit = plate.inlet().to(inlet.unit());
        double inches = inlet.unit().to(Unit.INCH_OF_WATER).apply(inlet.value());
        if (limit.contains(inlet.value()) || !(inlet.value() > 0)) {
            return;
        }
        boolean over = inlet.value() > limit.upper();
        double other = over
                ? Unit.INCH_OF_WATER
                        .to(inlet.unit())
                        .apply(MILLIBAR.to(Unit.INCH_OF_WATER).apply(inches))
                : inlet.value() * Unit.INCH_OF_WATER.to(MILLIBAR).apply(1);
        if (limit.contains(other)) {
            words.add(String.format(
                    Locale.ROOT,
                    "The inlet at rest reads %.2f %s; with inches of water and millibars exchanged it would be %.2f %s: does"
                            + " the gauge show the unit that its profile says?",
                    inlet.value(),
                    inlet.unit().symbol(),
                    other,
                    inlet.unit().symbol()));
        }
        if (plate.fuel() == Fuel.NATURAL_GAS && inches >= PROPANE_FROM && inches <= PROPANE_TO) {
            words.add(
                    "The inlet at rest is one of propane, and the plate says natural gas: stop until plate, label and gas"
                            + " agree.");
        } else if (plate.fuel() == Fuel.PROPANE && inches < PROPANE_FROM && !over) {
            words.add(
                    "The inlet at rest is one of natural gas, and the plate says propane: stop until plate, label and gas"
                            + " agree.");
        }
    }

    private static void fallen(
            ChannelReading inlet, List<StepRun> steps, StepKind before, List<String> words, String question) {
        steps.stream()
                .filter(s -> s.step.kind() == before && !s.superseded && s.progress == Progress.TAKEN)
                .flatMap(s -> s.readings.stream())
                .flatMap(r -> r.channel(Role.INLET).stream())
                .reduce((a, b) -> b)
                .filter(former ->
                        former.value() - inlet.value() <= Math.hypot(ownUncertainty(former), ownUncertainty(inlet)))
                .ifPresent(former -> words.add("The inlet stands " + question));
    }

    /** Of two readings of one gauge: its accuracy cancels. */
    private static double ownUncertainty(ChannelReading part) {
        return Double.isNaN(part.settleUncertainty()) ? part.expandedUncertainty() : part.settleUncertainty();
    }

    private static void wideOpen(ChannelReading inlet, ChannelReading manifold, StagePlate stage, List<String> words) {
        double room = Unit.INCH_OF_WATER.to(inlet.unit()).apply(ROOM);
        boolean low = manifold.value() < stage.unit().to(manifold.unit()).apply(stage.manifoldTarget());
        if (low && manifold.value() > 0 && inlet.value() - manifold.value() < room) {
            words.add(String.format(
                    Locale.ROOT,
                    "The valve is wide open: the inlet of %.2f %s holds the manifold down, and the screw has no answer."
                            + " Look to the supply.",
                    inlet.value(),
                    inlet.unit().symbol()));
        }
    }
}
