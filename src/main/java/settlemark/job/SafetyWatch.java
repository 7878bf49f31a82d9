package settlemark.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/**
 * Watches the channels for what can hurt people, whatever step is at hand: an inlet over the plate's most, an inlet that
 * climbs with nothing firing, a hose that is off while the heat goes on. All limits of time here are this program's own.
 */
final class SafetyWatch {
    private static final String OVER = "inlet-over";
    private static final String CLIMBING = "inlet-climbing";
    private static final String HOSE = "hose-off";
    private static final String FLUE = "co-flue";
    private static final String ROOM = "co-room";
    /** ANSI Z21.47-1993, 2.8.1, as the formula co-air-free warns. */
    private static final double FLUE_PPM = 400;
    /** Over an hour, as indoor air guidelines have it; here it is told at once. */
    private static final double ROOM_PPM = 35;

    private static final String CO_CAUTION =
            "Carbon monoxide kills. Shut the appliance off, ventilate, leave where people feel unwell and call for help;"
                    + " tag it, tell the customer and the gas supplier.";
    private static final String SHUT_OFF =
            "Shut the gas off at the manual valve. Light nothing before the cause is found; the supplier or a licensed person"
                    + " decides.";

    /** Shorter than this is a stroke of the valve, not a state. */
    private static final double LASTS_SECONDS = 5;
    /** The manifold of a burning stage, and of none, inches of water. */
    private static final double BURNING_IN_H2O = 0.5;

    private static final double NOTHING_IN_H2O = 0.1;
    /** A burner that has really gone out has cooled the air by a tenth within this. */
    private static final double COOLS_SECONDS = 120;

    private static final double STILL_WARM = 0.9;
    /** Least rise of a burning furnace, kelvin. */
    private static final double WARM_KELVIN = 5;

    private static final double FALLEN_IN_H2O = 0.1;

    private static final Unit KELVIN = Unit.ucum("K").difference();

    private final List<Entry> entries = new ArrayList<>();
    private long overSinceNanos = -1;
    private long goodSinceNanos = -1;
    private final Map<String, Long> overSince = new HashMap<>();
    private final Map<String, Long> goodSince = new HashMap<>();
    private boolean burning;
    private long nothingSinceNanos = -1;
    private double riseThen = Double.NaN;
    private double climbedTo = Double.NaN;
    /** The plate that the most inlet is of: it is asked for at each sample. */
    private @Nullable RatingPlate mostBy;

    private @Nullable Limit mostInlet;
    private double mostInH2o;

    /** A notice while it runs. */
    private static final class Entry {
        final String key;
        final String kind;
        final long sinceNanos;
        final String words;
        final String caution;
        long curedNanos = -1;
        long seenNanos = -1;

        Entry(String key, String kind, long sinceNanos, String words, String caution) {
            this.key = key;
            this.kind = kind;
            this.sinceNanos = sinceNanos;
            this.words = words;
            this.caution = caution;
        }
    }

    List<SafetyNotice> notices() {
        return entries.stream()
                .map(e -> new SafetyNotice(e.key, e.sinceNanos, e.curedNanos, e.seenNanos, e.words, e.caution))
                .toList();
    }

    /** The person has seen it. */
    void seen(long timeNanos, String key) {
        entries.stream().filter(e -> e.key.equals(key) && e.seenNanos < 0).forEach(e -> e.seenNanos = timeNanos);
    }

    /** The lock-up's own look has found that the inlet climbs. */
    void climbing(long timeNanos, String words, double inlet, Unit unit) {
        if (open(CLIMBING) == null) {
            climbedTo = inH2o(unit, inlet);
            begin(CLIMBING, timeNanos, words, SHUT_OFF);
        }
    }

    /** The channels as they stand now. */
    void see(long timeNanos, Map<Role, ChannelNow> channels, Map<Role, Double> zeros, RatingPlate plate) {
        OptionalDouble inlet = pressure(Role.INLET, channels, zeros);
        if (inlet.isPresent()) {
            over(timeNanos, inlet.getAsDouble(), most(plate));
            fallen(timeNanos, inlet.getAsDouble());
        }
        carbonMonoxide(timeNanos, channels);
        OptionalDouble manifold = pressure(Role.MANIFOLD, channels, zeros);
        if (manifold.isPresent()) {
            hose(timeNanos, manifold.getAsDouble(), channels);
        }
    }

    private Limit most(RatingPlate plate) {
        Limit known = mostInlet;
        if (known == null || plate != mostBy) {
            known = plate.mostInlet();
            mostBy = plate;
            mostInlet = known;
            mostInH2o = inH2o(known.unit(), known.upper());
        }
        return known;
    }

    /** A maximum of the plate is not exceeded, whatever the uncertainty. */
    private void over(long timeNanos, double inlet, Limit limit) {
        boolean over = inlet > mostInH2o;
        overSinceNanos = !over ? -1 : overSinceNanos < 0 ? timeNanos : overSinceNanos;
        goodSinceNanos = over ? -1 : goodSinceNanos < 0 ? timeNanos : goodSinceNanos;
        if (over && seconds(overSinceNanos, timeNanos) >= LASTS_SECONDS && open(OVER) == null) {
            begin(
                    OVER,
                    timeNanos,
                    String.format(
                            Locale.ROOT,
                            "Inlet %.2f %s: over the most that the %s allows, %.2f %s",
                            limit.unit().equals(Unit.INCH_OF_WATER)
                                    ? inlet
                                    : Unit.INCH_OF_WATER.to(limit.unit()).apply(inlet),
                            limit.unit().symbol(),
                            limit.source(),
                            limit.upper(),
                            limit.unit().symbol()),
                    SHUT_OFF);
        }
        Entry open = open(OVER);
        if (open != null && goodSinceNanos >= 0 && seconds(goodSinceNanos, timeNanos) >= LASTS_SECONDS) {
            open.curedNanos = timeNanos;
        }
    }

    /** Of a reading that was judged, typed or not. */
    void flue(long timeNanos, List<Verdict> verdicts) {
        verdicts.stream()
                .filter(v -> v.subject().equals(Combustion.CO_AIR_FREE)
                        && !v.outcome().accepted()
                        && open(FLUE) == null)
                .forEach(v -> begin(
                        FLUE,
                        timeNanos,
                        String.format(
                                Locale.ROOT,
                                "CO in the flue %.0f ppm air-free: over its limit, %.0f ppm (%s)",
                                v.limit().unit().to(Combustion.PPM).apply(v.value()),
                                v.limit()
                                        .unit()
                                        .to(Combustion.PPM)
                                        .apply(v.limit().upper()),
                                v.limit().source()),
                        CO_CAUTION));
    }

    private void carbonMonoxide(long timeNanos, Map<Role, ChannelNow> channels) {
        OptionalDouble room = fraction(Role.ROOM_CARBON_MONOXIDE, channels, Combustion.PPM);
        if (room.isPresent()) {
            lasting(
                    ROOM,
                    timeNanos,
                    "CO in the room %.0f ppm: over %.0f ppm (indoor air, 1 h)",
                    room.getAsDouble(),
                    ROOM_PPM);
        }
        OptionalDouble flue = fraction(Role.CARBON_MONOXIDE, channels, Combustion.PPM);
        if (flue.isPresent()) {
            double oxygen =
                    Math.min(20, fraction(Role.OXYGEN, channels, Unit.PERCENT).orElse(0));
            double airFree = flue.getAsDouble() * 20.9 / (20.9 - oxygen);
            lasting(
                    FLUE,
                    timeNanos,
                    "CO in the flue %.0f ppm air-free: over its limit, %.0f ppm (ANSI Z21.47-1993 2.8.1)",
                    airFree,
                    FLUE_PPM);
        }
    }

    /** A notice once something has been so for longer than a stroke, and its end when it has not been so for as long. */
    private void lasting(String kind, long timeNanos, String words, double ppm, double most) {
        boolean over = ppm > most;
        long since = overSince.merge(kind, over ? timeNanos : -1L, (a, b) -> b < 0 || a < 0 ? b : a);
        long good = goodSince.merge(kind, over ? -1L : timeNanos, (a, b) -> b < 0 || a < 0 ? b : a);
        if (over && seconds(since, timeNanos) >= LASTS_SECONDS && open(kind) == null) {
            begin(kind, timeNanos, String.format(Locale.ROOT, words, ppm, most), CO_CAUTION);
        }
        if (!over && seconds(good, timeNanos) >= LASTS_SECONDS) {
            cure(kind, timeNanos);
        }
    }

    private static OptionalDouble fraction(Role role, Map<Role, ChannelNow> channels, Unit unit) {
        ChannelNow now = channels.get(role);
        return now == null || !Double.isFinite(now.value())
                ? OptionalDouble.empty()
                : OptionalDouble.of(now.unit().to(unit).apply(now.value()));
    }

    private void fallen(long timeNanos, double inlet) {
        Entry open = open(CLIMBING);
        if (open != null && inlet < climbedTo - FALLEN_IN_H2O) {
            open.curedNanos = timeNanos;
        }
    }

    /** The manifold has gone, and the air does not cool: the burner goes on, and the reading is no longer of it. */
    private void hose(long timeNanos, double manifold, Map<Role, ChannelNow> channels) {
        if (manifold > BURNING_IN_H2O) {
            burning = true;
            nothingSinceNanos = -1;
            cure(HOSE, timeNanos);
            return;
        }
        if (!burning || manifold > NOTHING_IN_H2O) {
            return;
        }
        OptionalDouble rise = rise(channels);
        if (rise.isEmpty()) {
            return;
        }
        if (nothingSinceNanos < 0) {
            nothingSinceNanos = timeNanos;
            riseThen = rise.getAsDouble();
        }
        if (rise.getAsDouble() < STILL_WARM * riseThen || riseThen < WARM_KELVIN) {
            burning = false;
            cure(HOSE, timeNanos);
        } else if (seconds(nothingSinceNanos, timeNanos) >= COOLS_SECONDS && open(HOSE) == null) {
            begin(
                    HOSE,
                    timeNanos,
                    "The manifold reads nothing while the heat goes on: its hose may be off the tap",
                    "Gas may be escaping: no switches, shut the gas off at the manual valve, ventilate. Then look at the"
                            + " hose and the tap.");
        }
    }

    private void begin(String kind, long timeNanos, String words, String caution) {
        long count = entries.stream().filter(e -> e.kind.equals(kind)).count();
        entries.add(new Entry(kind + "#" + (count + 1), kind, timeNanos, words, caution));
    }

    private void cure(String kind, long timeNanos) {
        Entry entry = open(kind);
        if (entry != null) {
            entry.curedNanos = timeNanos;
        }
    }

    private @Nullable Entry open(String kind) {
        for (Entry entry : entries) {
            if (entry.kind.equals(kind) && entry.curedNanos < 0) {
                return entry;
            }
        }
        return null;
    }

    private static double seconds(long fromNanos, long toNanos) {
        return (toNanos - fromNanos) / 1e9;
    }

    private static double inH2o(Unit unit, double value) {
        return unit.to(Unit.INCH_OF_WATER).apply(value);
    }

    private static OptionalDouble pressure(Role role, Map<Role, ChannelNow> channels, Map<Role, Double> zeros) {
        ChannelNow now = channels.get(role);
        return now == null || !Double.isFinite(now.value())
                ? OptionalDouble.empty()
                : OptionalDouble.of(inH2o(now.unit(), now.value() - zeros.getOrDefault(role, 0.0)));
    }

    /** In kelvin. */
    private static OptionalDouble rise(Map<Role, ChannelNow> channels) {
        ChannelNow supply = channels.get(Role.SUPPLY);
        ChannelNow back = channels.get(Role.RETURN);
        if (supply == null || back == null || !Double.isFinite(supply.value() - back.value())) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(supply.unit().difference().to(KELVIN).apply(supply.value() - back.value()));
    }
}
