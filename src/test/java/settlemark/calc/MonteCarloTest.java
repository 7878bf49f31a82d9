package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Quantity;

/**
 * First-order uncertainties against the spread of drawn inputs (JCGM 101:2008): within 2 %, or the result says that it is
 * not linear.
 */
class MonteCarloTest {
    private static final long SEED = 20_261_125L;
    private static final int DRAWS = 1_000_000;
    /** The dew point is looked for by halving, some hundred times slower. */
    private static final int FEWER_DRAWS = 200_000;

    private static final double WITHIN = 0.02;

    static List<TypicalCall> calls() throws IOException {
        return TypicalCall.all();
    }

    @ParameterizedTest
    @MethodSource("calls")
    void theUncertaintyIsTheSpreadOrTheResultSaysThatItIsNotLinear(TypicalCall call) throws RefusedInputException {
        Result result = call.formula().of(call.inputs());
        Quantity inSi = call.formula().inAnyUnit()
                ? result.quantity()
                : result.quantity().to(call.formula().unit());
        double spread = spread(call);
        double first = inSi.standardUncertainty();
        boolean agrees = first == 0 ? spread == 0 : Math.abs(first / spread - 1) <= WITHIN;
        System.out.printf(
                "MonteCarloTest %s seed %d: first order %.4g, drawn %.4g%n", call.formula(), SEED, first, spread);
        assertThat(agrees || !result.linear())
                .as("first order %s, drawn %s, linear %s (seed %s)", first, spread, result.linear(), SEED)
                .isTrue();
        // A result that calls itself not linear must not do so out of caution where field uncertainties are small.
        assertThat(result.linear()).as("linear").isEqualTo(!call.wide());
    }

    @Test
    void someWideCallsWouldBeMisjudgedByFirstOrder() throws IOException, RefusedInputException {
        int missed = 0;
        for (TypicalCall call : calls()) {
            if (call.wide() && !call.formula().inAnyUnit()) {
                double first = call.formula()
                        .of(call.inputs())
                        .quantity()
                        .to(call.formula().unit())
                        .standardUncertainty();
                double spread = spread(call);
                missed += Double.isNaN(spread) || Math.abs(first / spread - 1) > WITHIN ? 1 : 0;
            }
        }
        System.out.println("MonteCarloTest wide calls that first order misses: " + missed);
        assertThat(missed).isGreaterThanOrEqualTo(6);
    }

    @Test
    void everyFormulaHasATypicalCallWithEveryInput() throws IOException {
        List<String> lacking = new ArrayList<>();
        for (Formula formula : Formulas.all()) {
            for (Parameter parameter : formula.parameters()) {
                boolean given = calls().stream()
                        .anyMatch(c -> c.formula() == formula && c.inputs().has(parameter.key()));
                if (!given) {
                    lacking.add(formula + " " + parameter.key());
                }
            }
        }
        assertThat(lacking).isEmpty();
    }

    private static double spread(TypicalCall call) throws RefusedInputException {
        ToDoubleFunction<double[]> function = call.formula().function(call.inputs());
        double[] centre = Numbers.of(call);
        double[] deviation = Numbers.uncertaintiesOf(call);
        int draws = call.formula().name().equals("flue-dew-point") ? FEWER_DRAWS : DRAWS;
        SplittableRandom random = new SplittableRandom(SEED);
        double[] drawn = new double[centre.length];
        double origin = function.applyAsDouble(centre);
        double sum = 0;
        double squares = 0;
        for (int n = 0; n < draws; n++) {
            for (int i = 0; i < drawn.length; i++) {
                drawn[i] = deviation[i] == 0 ? centre[i] : centre[i] + deviation[i] * random.nextGaussian();
            }
            double apart = function.applyAsDouble(drawn) - origin;
            sum += apart;
            squares += apart * apart;
        }
        double mean = sum / draws;
        return Math.sqrt(Math.max(0, squares / draws - mean * mean));
    }
}
