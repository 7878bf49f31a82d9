package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Dimension;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** What a formula refuses, and what it says. */
class RefusedInputsTest {
    static List<TypicalCall> typical() throws IOException {
        return TypicalCall.all().stream().filter(call -> !call.wide()).toList();
    }

    /** Each typical call with each of its numbers. */
    static Stream<Arguments> numbers() throws IOException {
        return typical().stream()
                .filter(call -> !call.formula().inAnyUnit())
                .flatMap(call -> call.formula().parameters().stream()
                        .filter(p ->
                                p instanceof Parameter.Number && call.inputs().has(p.key()))
                        .map(p -> Arguments.of(call, p)));
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void aNumberJustOutsideItsRangeIsRefusedWithTheRange(TypicalCall call, Parameter.Number number) {
        double width = number.most() - number.least();
        Unit si = number.unit();
        for (double outside : List.of(number.least() - 1e-6 * width, number.most() + 1e-6 * width)) {
            Inputs inputs = call.inputs().with(number.key(), new Quantity(outside, 0, si).to(shown(number)));
            RefusedInputException refused = catchThrowableOfType(
                    RefusedInputException.class, () -> call.formula().of(inputs));
            assertThat(refused).as("%s = %s %s", number.key(), outside, si).isNotNull();
            String low = Significant.digits(si.to(shown(number)).apply(number.least()));
            String high = Significant.digits(si.to(shown(number)).apply(number.most()));
            assertThat(refused.problems())
                    .anySatisfy(problem -> assertThat(problem)
                            .startsWith(number.key() + " must be " + low + " to " + high + " "
                                    + number.shown().code()));
        }
    }

    private static Unit shown(Parameter.Number number) {
        return number.unit().dimension() == Dimension.TEMPERATURE_DIFFERENCE
                ? number.shown().difference()
                : number.shown();
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void aNumberAtTheEndsOfItsRangeIsNotRefusedForIt(TypicalCall call, Parameter.Number number) {
        for (double end : List.of(number.least(), number.most())) {
            Inputs inputs = call.inputs().with(number.key(), new Quantity(end, 0, number.unit()));
            RefusedInputException refused = catchThrowableOfType(
                    RefusedInputException.class, () -> call.formula().of(inputs));
            // Other reasons may remain, such as a range whose ends are not in order.
            assertThat(refused == null ? List.<String>of() : refused.problems())
                    .noneMatch(problem -> problem.startsWith(number.key() + " must be ") && problem.contains(", got "));
        }
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void aNumberOfAnotherKindIsNamedWithAUnitThatWouldDo(TypicalCall call, Parameter.Number number) {
        Unit other = number.unit().dimension() == Dimension.PRESSURE ? Unit.ucum("s") : Unit.PASCAL;
        Inputs inputs = call.inputs().with(number.key(), new Quantity(1, 0, other));
        assertThatThrownBy(() -> call.formula().of(inputs))
                .isInstanceOf(RefusedInputException.class)
                .hasMessageContaining(number.key() + " must be in a unit such as "
                        + number.shown().code() + ", got " + other.code());
    }

    @ParameterizedTest
    @MethodSource("typical")
    void everyMissingInputIsNamed(TypicalCall call) {
        List<String> needed = new ArrayList<>();
        for (Parameter parameter : call.formula().parameters()) {
            boolean alternative = call.formula().alternatives().stream().anyMatch(g -> g.contains(parameter.key()));
            if (!parameter.optional() && !alternative) {
                needed.add(parameter.key());
            }
        }
        for (String key : needed) {
            assertThatThrownBy(() -> call.formula().of(without(call.inputs(), key)))
                    .isInstanceOf(RefusedInputException.class)
                    .hasMessageContaining(key + " is missing");
        }
        for (List<String> group : call.formula().alternatives()) {
            Inputs none = call.inputs();
            for (String key : group) {
                none = without(none, key);
            }
            Inputs without = none;
            assertThatThrownBy(() -> call.formula().of(without))
                    .hasMessageContaining("exactly one of " + String.join(", ", group) + " must be given, got 0");
        }
    }

    private static Inputs without(Inputs inputs, String key) {
        Map<String, Quantity> numbers = new LinkedHashMap<>(inputs.numbers());
        Map<String, String> choices = new LinkedHashMap<>(inputs.choices());
        numbers.remove(key);
        choices.remove(key);
        return new Inputs(numbers, choices);
    }

    @ParameterizedTest
    @MethodSource("typical")
    void anUnknownInputIsNamedWithThoseThatAreKnown(TypicalCall call) {
        assertThatThrownBy(() -> call.formula().of(call.inputs().with("presure", "3.5")))
                .isInstanceOf(RefusedInputException.class)
                .hasMessageContaining(call.formula().name() + " has no input \"presure\"; it has ");
    }

    @ParameterizedTest
    @MethodSource("typical")
    void aWrongWordIsNamedWithTheWordsThatWouldDo(TypicalCall call) {
        for (Parameter parameter : call.formula().parameters()) {
            if (parameter instanceof Parameter.Choice choice
                    && !choice.choices().isEmpty()
                    && call.inputs().has(choice.key())) {
                assertThatThrownBy(() -> call.formula().of(call.inputs().with(choice.key(), "coal")))
                        .isInstanceOf(RefusedInputException.class)
                        .hasMessageContaining(choice.key() + " must be one of " + String.join(", ", choice.choices())
                                + ", got \"coal\"");
            }
        }
        assertThatCode(() -> call.formula().of(call.inputs())).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "derate|altitude=5000 ft|rule=maker; factor is missing",
                "input-against-plate|input=80000 Btu/h|plate=80000 Btu/h|altitude=0 ft|rule=maker; factor is missing",
                "clocked-input|volume=2 ft3|time=58 s|heating-value=1030 Btu/ft3|basis=standard; factor is missing",
                "clocked-input|volume=2 ft3|time=58 s|heating-value=1030 Btu/ft3|basis=as-delivered|factor=0.9; correct twice",
                "standard-flow|flow=80 ft3/h|meter=plain|atmospheric=14 psi|gauge=0.25 psi|base-pressure=14.73 psi"
                        + "|base-temperature=60 degF; temperature is missing",
                "standard-flow|flow=80 ft3/h|meter=temperature-compensated|atmospheric=14 psi|gauge=0.25 psi"
                        + "|base-pressure=14.73 psi|base-temperature=60 degF|temperature=40 degF; must not be corrected again",
                "rise-target|lower=70 degF|upper=40 degF; upper must be above lower",
                "rise-position|rise=50 degF|lower=70 degF|upper=40 degF; upper must be above lower",
                "conformance|value=3.5|standard-uncertainty=0.1; lower or upper is missing",
                "conformance|value=3.5|standard-uncertainty=0.1|lower=4|upper=3; upper must be above lower",
                "let-by|volume=0.02 ft3|drop=1 inH2O|time=60 s|atmospheric=14.6 psi|warming=1 degF; temperature is missing",
                "orifice-pressure|drill=47|flow=17 ft3/h|relative-density=0.6|coefficient=0.9|window-lower=4 inH2O"
                        + "|window-upper=3 inH2O; window-upper must be above window-lower",
                "orifice-drill|flow=500 ft3/h|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9; number drills are",
                "composition-wobbe|methane=90 %|nitrogen=5 %|basis=gross; got 95.000 %",
                "composition-wobbe|basis=gross; got 0.000 %"
            })
    void inputsThatDoNotGoTogetherAreRefused(String call, String said) {
        assertThatThrownBy(() -> Calls.call(call))
                .isInstanceOf(RefusedInputException.class)
                .hasMessageContaining(said);
    }

    @Test
    void everyProblemIsSaidAtOnce() {
        RefusedInputException refused =
                catchThrowableOfType(RefusedInputException.class, () -> Calls.call("gas-flow|volume=0 ft3|speed=3 s"));
        assertThat(refused.problems()).hasSize(3);
    }
}
