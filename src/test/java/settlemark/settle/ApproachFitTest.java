package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ApproachFitTest {
    private static final SettleSettings AIR = SettleSettings.defaults(SettleKind.AIR);
    private static final int BINS = 100;
    private static final double NOW = 3.0 * BINS;

    private final ApproachFit fit = new ApproachFit(AIR, new WindowFit.Room(AIR.mostBins()));

    private void feed(double level, double ramp, double left, double tau, double sigma, long seed) {
        Random random = new Random(seed);
        BinRing ring = new BinRing(3, AIR.mostBins());
        for (int i = 0; i <= BINS; i++) {
            double t = 3.0 * i + 1.5 - NOW;
            double approach = -left * Math.exp(-t / tau);
            ring.add(3.0 * i + 1.5, level + ramp * t / 180 + approach + sigma * random.nextGaussian());
            fit.fit(ring, 3.0 * i, 0);
        }
    }

    /** The curve that was put in comes out. */
    @ParameterizedTest
    @CsvSource({"120,0,0.5,60", "120,0.6,0.4,40", "70,-0.5,-0.8,80", "300,0,-2,25"})
    void findsTheCurve(double level, double ramp, double left, double tau) {
        feed(level, ramp, left, tau, 0, 1);
        assertThat(fit.found()).isTrue();
        assertThat(fit.tauSeconds()).isCloseTo(tau, within(0.05 * tau));
        assertThat(fit.left()).isCloseTo(left, within(0.03));
        assertThat(fit.ramp()).isCloseTo(ramp, within(0.06));
        assertThat(fit.end()).isCloseTo(level, within(0.06));
    }

    @Test
    void itsErrorsAreAsLargeAsItSays() {
        int within = 0;
        int found = 0;
        for (long seed = 1; seed <= 200; seed++) {
            fit.clear();
            feed(120, 0, 0.5, 60, 0.05, seed);
            if (fit.found()) {
                found++;
                within += Math.abs(fit.end() - 120) <= 2 * fit.endError() ? 1 : 0;
            }
        }
        assertThat(found).as("seeds 1 to 200").isGreaterThan(190);
        assertThat((double) within / found).isBetween(0.9, 0.995);
    }

    @Test
    void binsThatAreTooOldAreNoCurve() {
        BinRing ring = new BinRing(3, AIR.mostBins());
        for (int i = 0; i <= BINS; i++) {
            ring.add(3.0 * i, 120 - 50 * Math.exp(-3.0 * i / 60));
        }
        for (int i = 0; i < 3; i++) {
            fit.fit(ring, 3.0 * BINS, 0.1);
        }
        assertThat(fit.found()).isTrue();
        fit.fit(ring, 1e5, 0);
        assertThat(fit.found()).isFalse();
        fit.fit(ring, 1e5, 0);
        assertThat(fit.found()).as("nor without a time constant from before").isFalse();
    }

    /** A ramp that began before all bins is the curve's own: nothing of it is left to find. */
    @Test
    void aTurnBeforeTheFirstBinIsNone() {
        feed(120, 0, 0.5, 60, 0.05, 3);
        fit.turn(60);
        assertThat(fit.turnError()).isFinite();
        double known = fit.turnError();
        fit.turn(1e4);
        assertThat(fit.turnError()).as("cannot be told").isNotCloseTo(known, within(known));
    }

    @Test
    void aRampIsNoApproach() {
        for (long seed = 1; seed <= 50; seed++) {
            fit.clear();
            feed(120, 0.75, 0, 60, 0.05, seed);
            assertThat(!fit.found() || fit.couldMove(1.7) > 0.5)
                    .as("seed %d", seed)
                    .isTrue();
        }
    }
}
