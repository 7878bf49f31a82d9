package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Whether a value is inside its limits, with what certainty. */
final class DecisionFormulas {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private DecisionFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("conformance", "probability that the true value lies within the limits")
                        .number("value", "measured", "1", "1", -1e12, 1e12)
                        .number("standard-uncertainty", "of the value", "1", "1", 1e-12, 1e12)
                        .optional("lower", "lower limit", "1", "1", -1e12, 1e12)
                        .optional("upper", "upper limit", "1", "1", -1e12, 1e12)
                        .inOneUnit("value", "standard-uncertainty")
                        .source("JCGM 106:2012, 7: Phi((TU - y)/u) - Phi((TL - y)/u)")
                        .validity(
                                "normal distribution, no knowledge beyond the measurement; values and limits in units of one kind")
                        .givesNumber(DecisionFormulas::conformance),
                formula("acceptance-limit", "limit that a value must keep to be accepted with a guard band of U")
                        .number("limit", "tolerance limit", "1", "1", -1e12, 1e12)
                        .number("standard-uncertainty", "of the value", "1", "1", 0, 1e12)
                        .choice("side", "which limit it is", "lower", "upper")
                        .inOneUnit("limit", "standard-uncertainty")
                        .source("ILAC-G8:09/2019: guard band w = U = 2 u, at most 2.5 % false acceptance")
                        .validity("normal distribution; in the unit of the limit")
                        .givesLeading(v -> v.of("limit")
                                + (v.choice("side").equals("lower") ? 2 : -2) * v.of("standard-uncertainty")),
                formula("convert", "the same quantity in another unit")
                        .number("value", "with its unit", "1", "1", -1e300, 1e300)
                        .choice("to", "the other unit, by UCUM or as the trade writes it")
                        .inOneUnit("value", "")
                        .source("UCUM 2.2; inH2O is the conventional inch, 249.08891 Pa; Btu the international table's")
                        .validity("units of the same kind; temperatures are points on their scale")
                        .givesLeading(v -> v.of("value")),
                formula("resolution-uncertainty", "standard uncertainty of a reading's last digit")
                        .number("step", "smallest step shown, in any unit", "1", "1", 1e-12, 1e12)
                        .inOneUnit("step", "")
                        .source("JCGM 100:2008, F.2.2.1: step over the root of twelve")
                        .validity("all values within the step equally likely")
                        .givesLeading(v -> v.of("step") / Math.sqrt(12)));
    }

    private static double conformance(Values v) {
        double u = v.of("standard-uncertainty");
        double above = v.has("upper") ? phi((v.of("upper") - v.of("value")) / u) : 1;
        double below = v.has("lower") ? phi((v.of("lower") - v.of("value")) / u) : 0;
        return above - below;
    }

    private static double phi(double z) {
        return NORMAL.cumulativeProbability(z);
    }
}
