package settlemark.app;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.job.Fuel;
import settlemark.job.JobPlan;
import settlemark.job.Limit;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.measure.Unit;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.rig.RigHost;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;

/** The invented job that the demo runs. */
final class DemoScene {
    private static final String PLAN = "two-stage-natural-gas";
    private static final Unit PRESSURE = Unit.INCH_OF_WATER;

    private DemoScene() {}

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
                DemoRig.PLACE,
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
        return new RatingPlate(
                "two-stage furnace",
                Fuel.NATURAL_GAS,
                List.of(
                        new StagePlate("low", "low fire", 1.7, 0.2, PRESSURE, 56_000),
                        new StagePlate("high", "high fire", 3.5, 0.35, PRESSURE, 80_000)),
                new Limit(4.5, 10.5, PRESSURE, "plate"),
                new Limit(30, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate"));
    }
}
