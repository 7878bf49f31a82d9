package settlemark.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import settlemark.job.Act;
import settlemark.job.CorrectionPoint;
import settlemark.job.FormerReading;
import settlemark.job.Fuel;
import settlemark.job.GasHeat;
import settlemark.job.InstrumentCard;
import settlemark.job.Limit;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.job.Site;
import settlemark.job.StagePlate;
import settlemark.measure.Accuracy;
import settlemark.measure.Channel;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.TestProfiles;
import settlemark.session.LinkChange;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;
import settlemark.settle.ChannelReading;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.StageReading;

/** Invented sessions that the tests of the store share. */
final class Fixtures {
    static final String GAUGE = "gauge|Two-port gauge|true|port-1,port-2|[in_i'H2O]";
    static final String AIR = "air|Air probes|false|left,right|[degF]";
    static final long SECOND = 1_000_000_000L;

    private Fixtures() {}

    /** Stands in for the reader of real profiles: one line of five columns. */
    static Profile profile(String text) {
        String[] words = text.split("\\|", -1);
        if (words.length != 5) {
            throw new IllegalArgumentException("a test profile has five columns");
        }
        Unit unit = Unit.ucum(words[4]);
        List<Channel> channels = new ArrayList<>();
        for (String name : words[3].split(",", -1)) {
            channels.add(new Channel(name, name, unit.dimension(), unit, 0.01, Accuracy.UNKNOWN, 0.1, Double.NaN, 0));
        }
        return TestProfiles.of(words[0], words[1], Boolean.parseBoolean(words[2]), digest(text), text, channels);
    }

    static String digest(String text) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    static SqliteStore open(Path file) throws StoreException {
        return open(file, Runnable::run);
    }

    static SqliteStore open(Path file, Executor packer) throws StoreException {
        return SqliteStore.open(WorkspacePlace.chosen(file), Fixtures::profile, packer);
    }

    static List<ProbeSetup> probes() {
        return List.of(
                new ProbeSetup(
                        "gauge",
                        new ProbeAddress("rig", "gauge"),
                        profile(GAUGE),
                        Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD)),
                new ProbeSetup(
                        "air",
                        new ProbeAddress("serial", "/dev/ttyS1"),
                        profile(AIR),
                        Map.of("left", Role.SUPPLY, "right", Role.RETURN)));
    }

    static SessionHeader log(String key) {
        return log(key, probes());
    }

    /** The first probe alone, as a device of which this stays the same. */
    static SessionHeader logOf(String key, String identity) {
        ProbeSetup gauge = probes().get(0);
        return log(
                key, List.of(new ProbeSetup(gauge.name(), gauge.address(), gauge.profile(), gauge.roles(), identity)));
    }

    private static SessionHeader log(String key, List<ProbeSetup> probes) {
        return new SessionHeader(
                key,
                "Log " + key,
                Instant.parse("2026-03-14T09:31:00.000000001Z"),
                ZoneId.of("America/Denver"),
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                probes,
                Optional.empty(),
                Optional.empty(),
                "0.1.0-test");
    }

    static SessionHeader job(String key) {
        return new SessionHeader(
                key,
                "Ash Lane 12, \u00fcpstairs \"north\"",
                Instant.parse("2026-03-14T09:31:07.123456789Z"),
                ZoneId.of("Europe/Berlin"),
                Unit.inchOfWaterAt60F(),
                Unit.CELSIUS,
                probes(),
                Optional.of(Plans.get("two-stage-natural-gas")),
                Optional.of(plate()),
                "0.1.0-test");
    }

    static RatingPlate plate() {
        return new RatingPlate(
                "two-stage furnace, attic",
                Fuel.NATURAL_GAS,
                List.of(
                        new StagePlate("low", "low fire", 1.6, 0.1 + 0.2, Unit.INCH_OF_WATER, 52_000),
                        new StagePlate("high", "high fire", 3.5, 0.3, Unit.inchOfWaterAt4C(), Double.NaN)),
                new Limit(4.5, Double.POSITIVE_INFINITY, Unit.inchOfWaterAt20C(), "plate"),
                new Limit(-0.0, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate"));
    }

    /** Those that there have always been. */
    private static List<Act> formerActs() {
        return List.of(
                new Act.Confirm("plate"),
                new Act.Adjust("left-low"),
                new Act.CapOn("left-low"),
                new Act.TakeNow("found-low", "burner hunts, \"wind\""),
                new Act.Skip("shut", ""),
                new Act.Repeat("zero"),
                new Act.Tick("close", "All other appliances relit and working", true),
                new Act.Tick("close", "All other appliances relit and working", false),
                new Act.Note("found-high", "two lines\nand \u6f22\u5b57"),
                new Act.Plate(plate()),
                new Act.Person("R. Okafor"));
    }

    static List<Act> everyAct() {
        List<Act> acts = new ArrayList<>(formerActs());
        acts.add(new Act.MeterDial("clock-low", 0.1 + 0.2));
        acts.add(new Act.PointerAtMark("clock-low"));
        acts.add(new Act.Unmark("clock-low"));
        acts.add(new Act.EndRun("clock-low"));
        acts.add(new Act.DropRun("clock-low", "a \"burner\" was lit"));
        acts.add(new Act.Heat(new GasHeat(1032.5, 0.01, "gas supplier, M\u00e4rz")));
        acts.add(new Act.Seen("inlet-over#1"));
        acts.add(new Act.Entered(
                "combustion-low", Role.OXYGEN, 6.4, Unit.PERCENT, Double.NaN, "analyser \"7\", M\u00e4rz"));
        acts.add(new Act.Former(
                "2025-03-14", List.of(new FormerReading("low", Role.MANIFOLD, 1.7, 0.03, Unit.INCH_OF_WATER))));
        acts.add(new Act.TakePressures("found-high"));
        RatingPlate plain = plate();
        acts.add(new Act.Plate(new RatingPlate(
                plain.appliance(),
                plain.fuel(),
                plain.stages(),
                plain.inlet(),
                plain.rise(),
                plain.statics(),
                new Limit(Double.NEGATIVE_INFINITY, 34.9, Unit.ucum("mbar"), "gas control"),
                new Site(5000.5, Site.Derating.MAKER, 0.84))));
        acts.add(new Act.GoOn("the program had ended for 95 s"));
        acts.add(new Act.Settings(
                SettleChoices.NONE,
                new SettleChoices(Map.of(
                        SettleKind.GAS,
                        new SettleAdjustment(0.1 + 0.2, Double.NaN, 60, List.of(20.0, 40.0), 0, 15),
                        SettleKind.STACK,
                        new SettleAdjustment(Double.NaN, 5, Double.NaN, List.of(), Double.NaN, Double.NaN)))));
        acts.add(new Act.Instrument(card(), Map.of(Role.MANIFOLD, "port-2", Role.INLET, ""), true));
        acts.add(new Act.Instrument(InstrumentCard.unknown("7", "", ""), Map.of(), false));
        return acts;
    }

    static InstrumentCard card() {
        return new InstrumentCard(
                "A \"17\" \u00fc",
                "blue gauge",
                "gauge",
                Optional.of(LocalDate.of(2025, 3, 14)),
                Optional.empty(),
                List.of(
                        new CorrectionPoint("port-2", 0, -0.0, 0.01, Unit.INCH_OF_WATER),
                        new CorrectionPoint("port-2", 10, 0.1 + 0.2, 1e-320, Unit.inchOfWaterAt60F())));
    }

    static List<SessionEvent> everyEvent() {
        return events(everyAct());
    }

    /** As workspaces of former formats hold them. */
    static List<SessionEvent> formerEvents() {
        return events(formerActs());
    }

    private static List<SessionEvent> events(List<Act> acts) {
        List<SessionEvent> events = new ArrayList<>();
        events.add(new SessionEvent.Link(0, 1, LinkChange.UP, "opened"));
        events.add(new SessionEvent.Bytes(0, new Chunk(2, new byte[] {0, -1, 127, -128, 13, 10})));
        for (LinkChange change : LinkChange.values()) {
            events.add(new SessionEvent.Link(1, 3, change, "words of " + change));
        }
        for (Act act : acts) {
            events.add(new SessionEvent.Done(4, act));
        }
        events.add(new SessionEvent.Clock(5, true, 3600 * SECOND, "slept for an hour"));
        events.add(new SessionEvent.Clock(Long.MAX_VALUE, false, -3600 * SECOND, "set back by an hour"));
        return events;
    }

    static StageReading reading(long timeNanos) {
        return new StageReading(
                "found-low",
                "found",
                timeNanos,
                true,
                "by hand",
                List.of(
                        new ChannelReading(
                                Role.INLET,
                                6.712345678901234,
                                0.1 + 0.2,
                                Double.NaN,
                                -0.0,
                                Unit.inchOfWaterAt60F(),
                                timeNanos - 20 * SECOND,
                                timeNanos,
                                false,
                                "not settled: could still move"),
                        new ChannelReading(
                                Role.SUPPLY, -0.0, 0, 1e-320, 0.0, Unit.CELSIUS, 0, timeNanos, true, "settled")));
    }

    /** Second number n of a session of four channels at 10 Hz, each chunk with its two samples. */
    static WriteBatch second(long n) {
        List<SessionEvent> events = new ArrayList<>();
        List<SampleBlock> samples = new ArrayList<>();
        for (int probe = 0; probe < 2; probe++) {
            for (int i = 0; i < 10; i++) {
                byte[] bytes = ("P" + (n * 10 + i) + " +1.234 +3.512\r\n").getBytes(StandardCharsets.US_ASCII);
                events.add(new SessionEvent.Bytes(probe, new Chunk(time(n, i), bytes)));
            }
            for (int channel = 0; channel < 2; channel++) {
                samples.add(block(probe, channel, n));
            }
        }
        List<StageReading> readings = n % 5 == 4 ? List.of(reading(time(n, 9))) : List.of();
        return new WriteBatch(n * 20, events, samples, List.of(), readings, (n + 1) * SECOND);
    }

    static SampleBlock block(int probe, int channel, long n) {
        long[] times = new long[10];
        double[] values = new double[10];
        for (int i = 0; i < 10; i++) {
            times[i] = time(n, i);
            values[i] = value(probe, channel, n * 10 + i);
        }
        return new SampleBlock(probe, channel, times, values, new byte[10]);
    }

    static long time(long second, int tenth) {
        return second * SECOND + tenth * (SECOND / 10) + (second * 31 + tenth) % 977;
    }

    static double value(int probe, int channel, long index) {
        return 3.5 + probe + channel * 0.1 + Math.sin(index * 0.01) * 0.013;
    }
}
