package settlemark.calc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/**
 * Whether several looks at one heat flow hold together: weighted least squares on the logarithms of gas rate and heating
 * value, a test of its largest residual, and which look, left out, makes the others agree (method: P. Bevington, D.
 * Robinson, Data Reduction and Error Analysis for the Physical Sciences, chapters 4 and 6).
 *
 * <p>Valid for relative uncertainties below about a tenth.
 *
 * @param input the heat flow that fits all looks best, gross or net as the heating value is
 * @param chiSquare sum of squared residuals over their standard uncertainties
 * @param degreesOfFreedom looks beyond what is needed; 0 where there is nothing to compare
 * @param agrees no residual is larger than the uncertainties let expect, at a level of 1.8 %
 * @param suspects looks that disagree, the likeliest first; empty where all agree. Two that cannot be told apart stand
 *     both
 */
public record Reconciliation(
        Quantity input, double chiSquare, int degreesOfFreedom, boolean agrees, List<Suspect> suspects) {
    private static final double LEVEL = 0.018;
    /** Chi-squares closer than this do not tell two suspects apart. */
    private static final double TELLS_APART = 2;

    private static final Unit WATT = Unit.ucum("W");
    private static final Unit FLOW = Unit.ucum("m3/s");
    private static final Unit HEAT_PER_VOLUME = Unit.ucum("J/m3");

    public Reconciliation {
        suspects = List.copyOf(suspects);
    }

    /** Which look. */
    public enum Look {
        ORIFICE,
        METER,
        HEATING_VALUE,
        AIR
    }

    /**
     * A look that disagrees with the others.
     *
     * @param look which
     * @param ratio what it says over what the others say
     * @param chiSquareWithout what is left when it is left out
     * @param meaning what that usually means
     */
    public record Suspect(Look look, double ratio, double chiSquareWithout, String meaning) {}

    public static Reconciliation of(HeatLooks looks) {
        List<Observation> all = observations(looks);
        Fit fit = Fit.of(all);
        boolean agrees = fit.freedom() == 0 || worst(all, fit) <= limit(fit.freedom());
        Quantity input = new Quantity(
                Math.exp(fit.lnFlow() + fit.lnHeat()),
                Math.exp(fit.lnFlow() + fit.lnHeat()) * fit.inputUncertainty(),
                WATT);
        return new Reconciliation(input, fit.chiSquare(), fit.freedom(), agrees, agrees ? List.of() : suspects(all));
    }

    /** The most that leaving one look out takes off chi-square: the square of its residual in standard deviations. */
    private static double worst(List<Observation> all, Fit fit) {
        double worst = 0;
        for (Observation one : all) {
            List<Observation> others = all.stream().filter(o -> o != one).toList();
            if (Fit.determines(others)) {
                worst = Math.max(worst, fit.chiSquare() - Fit.of(others).chiSquare());
            }
        }
        return worst;
    }

    /** With two degrees of freedom three residuals are tried, so the level is shared among them (Bonferroni). */
    private static double limit(int freedom) {
        double level = freedom == 1 ? LEVEL : LEVEL / 3;
        return ChiSquaredDistribution.of(1).inverseSurvivalProbability(level);
    }

    private static List<Suspect> suspects(List<Observation> all) {
        List<Suspect> suspects = new ArrayList<>();
        for (Observation one : all) {
            List<Observation> others = all.stream().filter(o -> o != one).toList();
            if (!Fit.determines(others)) {
                continue;
            }
            Fit fit = Fit.of(others);
            double ratio = Math.exp(one.ln() - one.flow() * fit.lnFlow() - one.heat() * fit.lnHeat());
            suspects.add(new Suspect(one.look(), ratio, fit.chiSquare(), Meanings.of(one.look(), ratio)));
        }
        suspects.sort(Comparator.comparing(Suspect::chiSquareWithout));
        double best = suspects.isEmpty() ? 0 : suspects.get(0).chiSquareWithout();
        return suspects.stream()
                .filter(s -> s.chiSquareWithout() <= best + TELLS_APART)
                .toList();
    }

    private static List<Observation> observations(HeatLooks looks) {
        List<Observation> all = new ArrayList<>();
        looks.orifice().ifPresent(q -> all.add(Observation.of(Look.ORIFICE, q.to(FLOW), 1, 0)));
        looks.meter().ifPresent(q -> all.add(Observation.of(Look.METER, q.to(FLOW), 1, 0)));
        all.add(Observation.of(Look.HEATING_VALUE, looks.heatingValue().to(HEAT_PER_VOLUME), 0, 1));
        looks.air().ifPresent(q -> all.add(Observation.of(Look.AIR, q.to(WATT), 1, 1)));
        return all;
    }

    /** A logarithm that is the sum of those of the flow and the heating value, as far as they count. */
    record Observation(Look look, double ln, double u, double flow, double heat) {
        static Observation of(Look look, Quantity quantity, double flow, double heat) {
            return new Observation(
                    look, Math.log(quantity.value()), quantity.standardUncertainty() / quantity.value(), flow, heat);
        }
    }

    /** Weighted least squares of two unknowns. */
    record Fit(double lnFlow, double lnHeat, double chiSquare, int freedom, double inputUncertainty) {
        static boolean determines(List<Observation> looks) {
            return determinant(looks)
                    > 1e-9
                            * looks.stream()
                                    .mapToDouble(o -> 1 / (o.u() * o.u()))
                                    .sum();
        }

        private static double determinant(List<Observation> looks) {
            double[] n = normal(looks);
            return n[0] * n[2] - n[1] * n[1];
        }

        /** Flow-flow, flow-heat, heat-heat, flow-value, heat-value. */
        private static double[] normal(List<Observation> looks) {
            double[] n = new double[5];
            for (Observation o : looks) {
                double w = 1 / (o.u() * o.u());
                n[0] += w * o.flow() * o.flow();
                n[1] += w * o.flow() * o.heat();
                n[2] += w * o.heat() * o.heat();
                n[3] += w * o.flow() * o.ln();
                n[4] += w * o.heat() * o.ln();
            }
            return n;
        }

        static Fit of(List<Observation> looks) {
            double[] n = normal(looks);
            double determinant = n[0] * n[2] - n[1] * n[1];
            double flow = (n[2] * n[3] - n[1] * n[4]) / determinant;
            double heat = (n[0] * n[4] - n[1] * n[3]) / determinant;
            double chiSquare = 0;
            for (Observation o : looks) {
                double residual = (o.ln() - o.flow() * flow - o.heat() * heat) / o.u();
                chiSquare += residual * residual;
            }
            double variance = (n[0] + n[2] - 2 * n[1]) / determinant;
            return new Fit(flow, heat, chiSquare, looks.size() - 2, Math.sqrt(variance));
        }
    }
}
