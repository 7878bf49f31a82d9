package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import settlemark.job.Act;
import settlemark.job.Fuel;
import settlemark.job.JobRun;
import settlemark.job.JobState;
import settlemark.job.Limit;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** Pascals in a conventional inch of water: 249.08891 (UCUM's own figure); shares of a gas have no other unit. */
final class JobUnitsTest {
    private static final double PASCALS = 249.08891;
    private static final Limit STATIC = new Limit(Double.NEGATIVE_INFINITY, 0.5, Unit.INCH_OF_WATER, "plate");
    private static final RatingPlate PLATE = new RatingPlate(
            "furnace",
            Fuel.NATURAL_GAS,
            List.of(
                    new StagePlate("low", "low fire", 1.7, 0.2, Unit.INCH_OF_WATER, 56_000),
                    new StagePlate("high", "high fire", 3.5, 0.35, Unit.INCH_OF_WATER, 80_000)),
            new Limit(4.5, 10.5, Unit.INCH_OF_WATER, "plate"),
            new Limit(30, 60, Unit.FAHRENHEIT.difference(), "plate"),
            STATIC);

    private static JobState typed() {
        JobRun run = new JobRun(Plans.get("two-stage-natural-gas"), PLATE);
        run.act(1, new Act.Entered("statics", Role.SUPPLY_STATIC, 0.2, Unit.INCH_OF_WATER, 0.01, "gauge 7"));
        run.act(2, new Act.Entered("statics", Role.RETURN_STATIC, -0.28, Unit.INCH_OF_WATER, 0.01, "gauge 7"));
        run.act(3, new Act.Confirm("statics"));
        run.observe(3, Map.of());
        run.act(4, new Act.Entered("combustion-high", Role.OXYGEN, 6, Unit.PERCENT, 0.3, "analyser 4"));
        run.act(5, new Act.Entered("combustion-high", Role.CARBON_MONOXIDE, 20, Unit.ucum("[ppm]"), 5, "analyser 4"));
        return run.state();
    }

    private static StepState step(JobState job, String key) {
        return job.step(key).orElseThrow();
    }

    @Test
    void pressuresAreConvertedSharesOfAGasStayAndNothingTypedIsLost() {
        JobState job = typed();
        SnapshotUnits si = new SnapshotUnits(Unit.PASCAL, Unit.CELSIUS);
        JobState shown = JobUnits.ofValues(si::shown).job(job, Unit.INCH_OF_WATER);

        assertThat(shown.plate().statics().upper()).isCloseTo(0.5 * PASCALS, within(1e-6));
        StepState statics = step(shown, "statics");
        assertThat(statics.typed()).hasSize(2).isEqualTo(step(job, "statics").typed());
        assertThat(statics.verdicts())
                .singleElement()
                .satisfies(v -> assertThat(v.value()).isCloseTo(0.48 * PASCALS, within(1e-3)));
        assertThat(step(shown, "combustion-high").typed())
                .hasSize(2)
                .isEqualTo(step(job, "combustion-high").typed());
    }

    @Test
    void aReadingOfAGasKeepsItsUnit() {
        ChannelReading oxygen =
                new ChannelReading(Role.OXYGEN, 6, 0.2, 0.1, 0, Unit.PERCENT, 0, 1, true, "settled", "");
        StageReading reading = new StageReading("combustion-high", "found", 1, false, "", List.of(oxygen));
        assertThat(new SnapshotUnits(Unit.PASCAL, Unit.CELSIUS).reading(reading))
                .isEqualTo(reading);
    }
}
