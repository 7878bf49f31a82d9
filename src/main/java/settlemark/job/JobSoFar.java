package settlemark.job;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import settlemark.measure.Role;
import settlemark.settle.StageReading;

/** Where a running job stands: what every act and every sample may change. */
final class JobSoFar {
    final StepList steps;
    final Map<Role, Double> zeros = new EnumMap<>(Role.class);
    /** Each channel after the last sample. */
    final Map<Role, ChannelNow> channels = new EnumMap<>(Role.class);

    final SafetyWatch safety = new SafetyWatch();
    final PrePurge prePurge = new PrePurge();
    /** Readings that nobody has fetched yet. */
    final List<StageReading> taken = new ArrayList<>();

    RatingPlate plate;
    Readiness readiness;
    GasHeat heat;

    JobSoFar(JobPlan plan, RatingPlate plate) {
        this.steps = new StepList(plan);
        this.plate = plate;
        this.readiness = new Readiness(plate);
        this.heat = GasHeat.customary(plate.fuel());
    }
}
