package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Dimension;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** There and back again, and the same from other units. */
class RoundTripTest {
    private static final double CLOSE = 1e-9;
    private static final long SEED = 7L;
    private static final int TRIPS = 200;
    private static final Unit FLOW = Unit.ucum("[cft_i]/h");
    private static final Unit WATER = Unit.INCH_OF_WATER;
    private static final Unit INCH = Unit.ucum("[in_i]");
    private static final Unit HEAT = Unit.ucum("[Btu_IT]/[cft_i]");

    private final SplittableRandom random = new SplittableRandom(SEED);

    private Quantity draw(double least, double most, Unit unit) {
        return new Quantity(least + (most - least) * random.nextDouble(), 0, unit);
    }

    private static Result result(String name, Inputs inputs) throws RefusedInputException {
        return Formulas.find(name).orElseThrow().of(inputs);
    }

    private static void assertSame(Quantity found, Quantity start) {
        double value = found.to(start.unit()).value();
        assertThat(value).as("seed " + SEED).isCloseTo(start.value(), within(CLOSE * Math.abs(start.value())));
    }

    @Test
    void orificePressureAndDiameterTurnTheFlowRound() throws RefusedInputException {
        for (int i = 0; i < TRIPS; i++) {
            Quantity diameter = draw(0.0135, 0.3, INCH);
            Quantity pressure = draw(0.5, 12, WATER);
            Inputs gas = Inputs.none()
                    .with("relative-density", draw(0.5, 2, Unit.ucum("1")))
                    .with("coefficient", draw(0.6, 1, Unit.ucum("1")));
            Inputs orifice = gas.with("diameter", diameter);
            Quantity flow =
                    result("orifice-flow", orifice.with("pressure", pressure)).quantity();
            assertSame(result("orifice-pressure", orifice.with("flow", flow)).quantity(), pressure);
            Inputs back = gas.with("flow", flow).with("pressure", pressure);
            assertSame(result("orifice-diameter", back).quantity(), diameter);
        }
    }

    @Test
    void thePressureForAnInputGivesTheInput() throws RefusedInputException {
        for (int i = 0; i < TRIPS; i++) {
            Inputs gas = Inputs.none()
                    .with("relative-density", draw(0.5, 2, Unit.ucum("1")))
                    .with("coefficient", draw(0.6, 1, Unit.ucum("1")))
                    .with("drill", "47");
            Quantity input = draw(50_000, 120_000, Unit.ucum("[Btu_IT]/h"));
            Quantity heat = draw(900, 1100, HEAT);
            Quantity pressure = result(
                            "input-pressure",
                            gas.with("input", input)
                                    .with("heating-value", heat)
                                    .with("orifices", new Quantity(5, 0, Unit.ucum("1"))))
                    .quantity();
            Quantity flow =
                    result("orifice-flow", gas.with("pressure", pressure)).quantity();
            Quantity five = new Quantity(flow.value() * 5, 0, flow.unit());
            assertSame(
                    result("heat-input", Inputs.none().with("flow", five).with("heating-value", heat))
                            .quantity(),
                    input);
        }
    }

    @Test
    void thePipeEquationGoesBothWays() throws RefusedInputException {
        for (int i = 0; i < TRIPS; i++) {
            Inputs pipe = Inputs.none()
                    .with("length", draw(5, 300, Unit.ucum("[ft_i]")))
                    .with("diameter", draw(0.4, 4, INCH))
                    .with("fuel", i % 2 == 0 ? "natural-gas" : "propane");
            Quantity drop = draw(0.1, 6, WATER);
            Quantity flow = result("pipe-capacity", pipe.with("drop", drop)).quantity();
            assertSame(result("pipe-drop", pipe.with("flow", flow)).quantity(), drop);
            Quantity wanted = draw(10, 2000, FLOW);
            Inputs wide = pipe.with("diameter", draw(1.5, 4, INCH));
            Quantity needed = result("pipe-drop", wide.with("flow", wanted)).quantity();
            if (needed.to(WATER).value() > 0.01) {
                assertSame(result("pipe-capacity", wide.with("drop", needed)).quantity(), wanted);
            }
        }
    }

    @Test
    void convertingToAnotherGasAndBackLeavesTheOrifice() throws RefusedInputException {
        for (int i = 0; i < TRIPS; i++) {
            Quantity natural = draw(1200, 1400, HEAT);
            Quantity propane = draw(1950, 2150, HEAT);
            Quantity low = draw(3, 4, WATER);
            Quantity high = draw(9, 11, WATER);
            double there = conversion(natural, propane, low, high);
            double back = conversion(propane, natural, high, low);
            assertThat(there * back).isCloseTo(1, within(CLOSE));
        }
    }

    private static double conversion(Quantity from, Quantity to, Quantity pressure, Quantity newPressure)
            throws RefusedInputException {
        Inputs inputs = Inputs.none()
                .with("wobbe", from)
                .with("new-wobbe", to)
                .with("pressure", pressure)
                .with("new-pressure", newPressure);
        return result("conversion-area", inputs).quantity().value();
    }

    @Test
    void unitsThereAndBackLeaveTheValue() throws RefusedInputException {
        List<List<String>> pairs = List.of(
                List.of("[in_i'H2O]", "mbar"),
                List.of("[psi]", "kPa"),
                List.of("[degF]", "Cel"),
                List.of("[Btu_IT]/h", "kW"),
                List.of("[Btu_IT]/[cft_i]", "MJ/m3"),
                List.of("[cft_i]/h", "m3/h"));
        for (List<String> pair : pairs) {
            Quantity start = draw(1, 100, Unit.ucum(pair.get(0)));
            Quantity other = start.to(Unit.ucum(pair.get(1)));
            assertSame(other.to(start.unit()), start);
        }
    }

    static List<TypicalCall> calls() throws IOException {
        return TypicalCall.all().stream()
                .filter(call -> !call.formula().inAnyUnit())
                .toList();
    }

    @ParameterizedTest
    @MethodSource("calls")
    void customaryAndSiInputsGiveTheSameResult(TypicalCall call) throws RefusedInputException {
        Unit si = call.formula().unit();
        Quantity fromCustomary = call.formula().of(call.inputs()).quantity().to(si);
        Inputs inputs = call.inputs();
        for (Parameter parameter : call.formula().parameters()) {
            if (parameter instanceof Parameter.Number number && inputs.has(number.key())) {
                Quantity given = Objects.requireNonNull(inputs.numbers().get(number.key()));
                inputs = inputs.with(number.key(), Numbers.computed(call.formula(), number, given));
            }
        }
        Quantity fromSi = call.formula().of(inputs).quantity().to(si);
        double close = CLOSE * Math.abs(fromSi.value()) + (si.dimension() == Dimension.TEMPERATURE ? 1e-9 : 0);
        assertThat(fromCustomary.value()).isCloseTo(fromSi.value(), within(close));
        // Sensitivities are taken by differences: rounding shows earlier in them.
        assertThat(fromCustomary.standardUncertainty())
                .isCloseTo(fromSi.standardUncertainty(), within(1e-6 * fromSi.standardUncertainty()));
    }
}
