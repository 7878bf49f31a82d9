package settlemark.app;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import settlemark.cli.Program;
import settlemark.job.Fuel;
import settlemark.job.JobPlan;
import settlemark.job.Limit;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.measure.Unit;
import settlemark.rig.Appliance;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.rig.RigFault;
import settlemark.rig.RigHost;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;

/**
 * The invented job that the demo runs.
 *
 * @param plan what is done
 * @param rig its furnace and instruments
 */
record DemoScene(JobPlan plan, DemoRig.Settings rig) {
    private static final String PLAN = "two-stage-natural-gas";
    private static final Unit PRESSURE = Unit.INCH_OF_WATER;

    /** What a request asks for; {@link #wrong} must have found nothing. */
    static DemoScene of(Program.Demo request) {
        JobPlan plan = request.plan().orElseGet(() -> Plans.get(PLAN));
        return new DemoScene(
                plan, new DemoRig.Settings(request.seed(), true, faults(request.faults()), appliance(plan)));
    }

    /** The furnace that a plan is for. */
    static Appliance appliance(JobPlan plan) {
        if (!plan.fuels().contains(Fuel.NATURAL_GAS)) {
            return Appliance.TWO_STAGE_PROPANE;
        }
        if (plan.stages().contains("middle")) {
            return Appliance.MODULATING;
        }
        boolean set = plan.steps().stream().anyMatch(s -> s.kind() == StepKind.LEFT);
        return set || !plan.readsManifold() ? Appliance.TWO_STAGE : Appliance.TWO_STAGE_SET;
    }

    /** Faults by their keys, which {@link #wrongFault} must have found good. */
    static Set<RigFault> faults(List<String> keys) {
        Set<RigFault> faults = EnumSet.noneOf(RigFault.class);
        keys.forEach(key -> faults.add(fault(key).orElseThrow()));
        return faults;
    }

    /** Why a bench cannot be had, in words. */
    static Optional<String> wrongFault(Program.Bench bench) {
        return bench.faults().stream()
                .filter(k -> fault(k).isEmpty())
                .findFirst()
                .map(unknown -> "no fault of the rig is called \"" + unknown + "\"; there are "
                        + Arrays.stream(RigFault.values()).map(RigFault::key).collect(Collectors.joining(", ")));
    }

    /** Why a request cannot be met, in words; empty where it can. */
    static Optional<String> wrong(Program.Demo request) {
        Optional<String> unknown = wrongFault(new Program.Bench(request.seed(), request.faults()));
        if (unknown.isPresent()) {
            return unknown;
        }
        List<String> misfits = request.plan().map(p -> p.misfits(plate(p))).orElse(List.of());
        return misfits.isEmpty()
                ? Optional.empty()
                : Optional.of("the demo rig has no furnace for this plan: " + String.join("; ", misfits));
    }

    private static Optional<RigFault> fault(String key) {
        return Arrays.stream(RigFault.values()).filter(f -> f.key().equals(key)).findFirst();
    }

    /** The session of this job, beginning now. */
    SessionHeader header(List<ProbeSetup> probes) {
        Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
        return header(now, ZoneId.systemDefault(), Program.VERSION, probes, plan, plate(plan));
    }

    /** The rig's plate, with the stages that a plan has. */
    static RatingPlate plate(JobPlan plan) {
        RatingPlate whole = plate(appliance(plan));
        List<StagePlate> stages = whole.stages().stream()
                .filter(s -> plan.stages().contains(s.key()))
                .toList();
        return stages.isEmpty()
                ? whole
                : new RatingPlate(
                        whole.appliance(), whole.fuel(), stages, whole.inlet(), whole.rise(), whole.statics());
    }

    /** The two-stage job with the instruments within the program. */
    static SessionHeader header(Instant now, ZoneId zone, String version) {
        return header(now, zone, version, within());
    }

    /** The two-stage job with other probes. */
    static SessionHeader header(Instant now, ZoneId zone, String version, List<ProbeSetup> probes) {
        return header(now, zone, version, probes, Plans.get(PLAN), plate());
    }

    static SessionHeader header(
            Instant now, ZoneId zone, String version, List<ProbeSetup> probes, JobPlan plan, RatingPlate plate) {
        return new SessionHeader(
                key(now, zone, "ash-lane"),
                plate.fuel() == Fuel.NATURAL_GAS && plate.stages().size() < 3
                        ? DemoRig.PLACE
                        : "Ash Lane 12, " + plate.appliance(),
                now,
                zone,
                PRESSURE,
                Unit.FAHRENHEIT,
                probes,
                Optional.of(plan),
                Optional.of(plate),
                version);
    }

    /** The rig's instruments within the program. */
    static List<ProbeSetup> within() {
        List<ProbeSetup> probes = new ArrayList<>();
        for (DemoInstrument instrument : DemoInstrument.values()) {
            probes.add(new ProbeSetup(
                    instrument.key(), RigHost.address(instrument), instrument.profile(), instrument.roles()));
        }
        return probes;
    }

    /** Readable, and different for sessions that begin in different milliseconds. */
    static String key(Instant now, ZoneId zone, String what) {
        return DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss-SSS", Locale.ROOT)
                        .withZone(zone)
                        .format(now)
                + "-" + what;
    }

    static RatingPlate plate() {
        return plate(Appliance.TWO_STAGE);
    }

    /** What stands on the plate of a furnace of the rig. */
    static RatingPlate plate(Appliance appliance) {
        return switch (appliance) {
            case TWO_STAGE, TWO_STAGE_SET -> twoStage();
            case MODULATING ->
                plate(
                        "modulating furnace",
                        Fuel.NATURAL_GAS,
                        List.of(
                                new StagePlate("low", "lowest fire", 0.56, 0.2, PRESSURE, 32_000),
                                new StagePlate("middle", "middle fire", 1.7, 0.2, PRESSURE, 56_000),
                                new StagePlate("high", "highest fire", 3.5, 0.35, PRESSURE, 80_000)),
                        new Limit(4.5, 10.5, PRESSURE, "plate"));
            case TWO_STAGE_PROPANE ->
                plate(
                        "two-stage furnace, propane",
                        Fuel.PROPANE,
                        List.of(
                                new StagePlate("low", "low fire", 4.9, 0.49, PRESSURE, 56_000),
                                new StagePlate("high", "high fire", 10, 1, PRESSURE, 80_000)),
                        new Limit(10.8, 13, PRESSURE, "plate"));
        };
    }

    private static RatingPlate plate(String name, Fuel fuel, List<StagePlate> stages, Limit inlet) {
        RatingPlate two = twoStage();
        return new RatingPlate(name, fuel, stages, inlet, two.rise(), two.statics());
    }

    private static RatingPlate twoStage() {
        return new RatingPlate(
                "two-stage furnace",
                Fuel.NATURAL_GAS,
                List.of(
                        new StagePlate("low", "low fire", 1.7, 0.2, PRESSURE, 56_000),
                        new StagePlate("high", "high fire", 3.5, 0.35, PRESSURE, 80_000)),
                new Limit(4.5, 10.5, PRESSURE, "plate"),
                new Limit(30, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate"),
                new Limit(Double.NEGATIVE_INFINITY, 0.5, PRESSURE, "plate"));
    }
}
