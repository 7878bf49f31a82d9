package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.calc.Formulas;
import settlemark.calc.Inputs;
import settlemark.calc.RefusedInputException;
import settlemark.calc.Result;
import settlemark.measure.Quantity;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** What a reading of the flue gas says, by the formulas of {@code calc}. */
final class Combustion {
    static final String CO_AIR_FREE = "co air-free";
    static final String EXCESS_AIR = "excess air";

    static final Unit PPM = Unit.ucum("[ppm]");
    /** Dry flue gas diluted by a draught hood or a leaking hose; this program's own. */
    private static final double DILUTED_PERCENT = 15;

    private Combustion() {}

    /** In a unit of oxygen, from oxygen or else from carbon dioxide. */
    static Optional<Quantity> oxygen(StageReading reading, Fuel fuel) {
        Optional<Quantity> read = reading.channel(Role.OXYGEN).map(Combustion::quantity);
        return read.isPresent()
                ? read
                : reading.channel(Role.CARBON_DIOXIDE)
                        .flatMap(c -> of(
                                "flue-oxygen",
                                Inputs.none()
                                        .with("carbon-dioxide", quantity(c))
                                        .with("fuel", word(fuel))))
                        .map(Result::quantity);
    }

    /** As the formulas call it. */
    private static String word(Fuel fuel) {
        return fuel == Fuel.PROPANE ? "propane" : "natural-gas";
    }

    private static Quantity quantity(ChannelReading part) {
        return new Quantity(part.value(), part.standardUncertainty(), part.unit());
    }

    /** Carbon monoxide as it would be without excess air, ppm; empty where the gas does not tell. */
    static Optional<Result> airFree(StageReading reading, Fuel fuel) {
        Optional<Quantity> oxygen = oxygen(reading, fuel);
        Optional<Quantity> co = reading.channel(Role.CARBON_MONOXIDE).map(Combustion::quantity);
        if (oxygen.isEmpty() || co.isEmpty()) {
            return Optional.empty();
        }
        return of("co-air-free", Inputs.none().with("co", co.get()).with("oxygen", oxygen.get()))
                .map(r -> r.in(PPM));
    }

    /** Air beyond what the fuel needs, %. */
    static Optional<Result> excessAir(StageReading reading, Fuel fuel) {
        return oxygen(reading, fuel)
                .flatMap(o -> of("excess-air", Inputs.none().with("oxygen", o).with("fuel", word(fuel))));
    }

    private static Optional<Result> of(String formula, Inputs inputs) {
        try {
            return Optional.of(Formulas.find(formula).orElseThrow().of(inputs));
        } catch (RefusedInputException e) {
            return Optional.empty();
        }
    }

    static List<Verdict> judge(PlanStep step, StageReading reading, RatingPlate plate) {
        List<Verdict> verdicts = new ArrayList<>();
        for (StepLimit own : step.limits()) {
            Optional<Result> result = own.subject().equals(CO_AIR_FREE)
                    ? airFree(reading, plate.fuel())
                    : own.subject().equals(EXCESS_AIR) ? excessAir(reading, plate.fuel()) : Optional.empty();
            result.map(r -> r.quantity().to(own.limit().unit()))
                    .ifPresent(q -> verdicts.add(
                            Verdict.judge(own.subject(), q.value(), q.expandedUncertainty(), own.limit())));
        }
        return verdicts;
    }

    static List<String> words(StageReading reading, RatingPlate plate) {
        List<String> words = new ArrayList<>();
        oxygen(reading, plate.fuel())
                .filter(o -> o.to(Unit.PERCENT).value() > DILUTED_PERCENT)
                .ifPresent(
                        o -> words.add(
                                "Oxygen is " + Figure.of(o.to(Unit.PERCENT).value())
                                        + " %: the sample looks diluted by air. Sample before the draught hood, and look at hose and trap."));
        airFree(reading, plate.fuel())
                .ifPresentOrElse(
                        r -> r.warnings().forEach(w -> words.add("CO " + w + ".")),
                        () -> words.add(
                                "CO air-free cannot be told without CO and oxygen or carbon dioxide within their range."));
        return words;
    }
}
