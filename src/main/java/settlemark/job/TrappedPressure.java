package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import settlemark.measure.Role;
import settlemark.settle.StageReading;

/** What the movement of a trapped pressure means, in words. */
final class TrappedPressure {
    /**
     * Ideal gas law at constant volume, P dT/T at 101,325 Pa and 60 degF (288.7 K): 195 Pa for 1 degF. An absolute
     * pressure of the air's stands behind a few inches on the gauge.
     */
    static final String WARMTH = "1 degF of warming of the trapped gas moves the gauge by about 0.8 inH2O: a test that"
            + " the sun, a hot burner or a draught can reach proves little.";

    /** A valve that lets by freely empties a pipe before the gas in it has come to rest. */
    static final String GONE =
            "Most of the trapped pressure had gone before the gas came to rest: the change is counted"
                    + " from the press.";

    /** Less than this part of the plate's least inlet is no trapped pressure; this program's own. */
    private static final double NOTHING_FRACTION = 0.1;
    /** What has lost this part while it came to rest has not come to rest; this program's own. */
    private static final double GONE_FRACTION = 0.5;

    private TrappedPressure() {}

    /** Why there is nothing to watch, empty where there is. */
    static String nothing(
            List<Role> watched, Map<Role, ChannelNow> channels, Map<Role, Double> zeros, RatingPlate plate) {
        for (Role role : watched) {
            ChannelNow now = channels.get(role);
            if (now != null) {
                double value = now.value() - zeros.getOrDefault(role, 0.0);
                double least = NOTHING_FRACTION * plate.inlet().to(now.unit()).lower();
                if (least > 0 && value < least) {
                    return String.format(
                            Locale.ROOT,
                            "The %s shows %.2f %s: no pressure is trapped. Open the manual valve until the inlet stands at"
                                    + " rest, then shut it again.",
                            role.word(),
                            value,
                            now.unit().symbol());
                }
            }
        }
        return "";
    }

    /** Whether it fell by so much between the press and the first reading that its rest proves nothing. */
    static boolean gone(StageReading whenTrapped, StageReading atRest) {
        return whenTrapped.channels().stream()
                .anyMatch(from -> atRest.channel(from.role())
                        .map(to -> to.value() < GONE_FRACTION * from.value())
                        .orElse(false));
    }

    static List<String> words(List<Verdict> verdicts) {
        List<String> said = new ArrayList<>();
        for (Verdict verdict : verdicts) {
            boolean certain = !verdict.limit().contains(verdict.value());
            if (certain) {
                said.add(String.format(
                        Locale.ROOT,
                        verdict.value() < 0
                                ? "The trapped pressure fell by %.2f %s: the valve lets gas by, or something leaks."
                                : "The trapped pressure rose by %.2f %s: the shut cock lets gas by, or the gas grew"
                                        + " warmer.",
                        Math.abs(verdict.value()),
                        verdict.limit().unit().symbol()));
            }
        }
        if (!verdicts.isEmpty()) {
            said.add(WARMTH);
        }
        return said;
    }
}
