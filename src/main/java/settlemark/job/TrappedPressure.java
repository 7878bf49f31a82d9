package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the movement of a trapped pressure means, in words. */
final class TrappedPressure {
    /**
     * Ideal gas law at constant volume, P dT/T at 101,325 Pa and 60 degF (288.7 K): 195 Pa for 1 degF. An absolute
     * pressure of the air's stands behind a few inches on the gauge.
     */
    static final String WARMTH = "1 degF of warming of the trapped gas moves the gauge by about 0.8 inH2O: a test that"
            + " the sun, a hot burner or a draught can reach proves little.";

    private TrappedPressure() {}

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
