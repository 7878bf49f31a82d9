package settlemark.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The small values that everything else is made of. */
final class MeasuredValuesTest {
    private static final Channel CHANNEL =
            new Channel("p", "P1", Dimension.PRESSURE, Unit.PASCAL, 0.1, Accuracy.UNKNOWN, 0.1, Double.NaN, 0);

    @Test
    void anAccuracyAddsItsPartsUp() {
        // 1 % of 200, 0.2 % of 1000, and 0.5: 2 + 2 + 0.5; over the square root of three by JCGM 100:2008, 4.3.7.
        Accuracy accuracy = new Accuracy(0.01, 0.002, 0.5, 1000);
        assertThat(accuracy.halfWidth(200)).isCloseTo(4.5, within(1e-12));
        assertThat(accuracy.halfWidth(-200)).isCloseTo(4.5, within(1e-12));
        assertThat(accuracy.standardUncertainty(200)).isCloseTo(2.598076211353316, within(1e-12));
        assertThat(Accuracy.UNKNOWN.standardUncertainty(200)).isZero();
        assertThat(new Accuracy(0, 0, 0, 0)).isEqualTo(Accuracy.UNKNOWN);
    }

    @ParameterizedTest
    @CsvSource({
        "-1e-9, 0, 0, 0",
        "0, -1e-9, 0, 0",
        "0, 0, -1e-9, 0",
        "0, 0, 0, -1e-9",
        "NaN, 0, 0, 0",
        "0, NaN, 0, 0",
        "0, 0, NaN, 0",
        "0, 0, 0, NaN"
    })
    void anAccuracyHasNoNegativePart(double ofReading, double ofRange, double constant, double range) {
        assertThatThrownBy(() -> new Accuracy(ofReading, ofRange, constant, range))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no negative part");
    }

    @Test
    void aChannelHasAllItsParts() throws ReflectiveOperationException {
        Constructor<?> constructor = Channel.class.getDeclaredConstructors()[0];
        for (int missing : new int[] {0, 1, 2, 3, 5}) {
            Object[] parts = {"p", "P1", Dimension.PRESSURE, Unit.PASCAL, 0.1, Accuracy.UNKNOWN, 0.1, Double.NaN, 0.0};
            assertThat(constructor.newInstance(parts)).isEqualTo(CHANNEL);
            parts[missing] = null;
            assertThatThrownBy(() -> constructor.newInstance(parts))
                    .isInstanceOf(InvocationTargetException.class)
                    .hasCauseInstanceOf(NullPointerException.class);
        }
        Constructor<?> quantity = Quantity.class.getDeclaredConstructors()[0];
        assertThatThrownBy(() -> quantity.newInstance(1.0, 0.0, null)).hasCauseInstanceOf(NullPointerException.class);
    }

    @Test
    void aChunkIsItsBytesTheirTimeAndTheirInput() {
        Chunk chunk = new Chunk(5, 1, new byte[] {1, 2});
        assertThat(chunk).isEqualTo(new Chunk(5, 1, new byte[] {1, 2}));
        assertThat(chunk).hasSameHashCodeAs(new Chunk(5, 1, new byte[] {1, 2}));
        for (Chunk other : new Chunk[] {
            new Chunk(6, 1, new byte[] {1, 2}), new Chunk(5, 2, new byte[] {1, 2}), new Chunk(5, 1, new byte[] {1, 3})
        }) {
            assertThat(chunk).isNotEqualTo(other).doesNotHaveSameHashCodeAs(other);
        }
        assertThat(chunk).isNotEqualTo("chunk");
        assertThat(new Chunk(5, new byte[1]).input()).isZero();
        assertThat(chunk).hasToString("Chunk[5 ns, input 1, 2 bytes]");
    }

    @Test
    void aChunkHoldsSomethingFromSomewhere() {
        assertThatThrownBy(() -> new Chunk(0, new byte[0])).hasMessage("a chunk holds at least one byte");
        assertThat(new Chunk(0, Chunk.STRAY, new byte[1]).input()).isEqualTo(-1);
        assertThatThrownBy(() -> new Chunk(0, -2, new byte[1])).hasMessageEndingWith("got -2");
    }

    @Test
    void changesOfUnitFollowEachOtherAndTurnBack() {
        Conversion toFahrenheit = new Conversion(32, 1.8);
        Conversion toRankine = toFahrenheit.then(new Conversion(459.67, 1));
        assertThat(toRankine.apply(100)).isCloseTo(671.67, within(1e-9));
        assertThat(new Conversion(3, 2).then(toFahrenheit)).isEqualTo(new Conversion(32 + 1.8 * 3, 3.6));
        assertThat(toFahrenheit.inverse().apply(212)).isCloseTo(100, within(1e-12));
        assertThat(toFahrenheit.applyDifference(-10)).isEqualTo(-18);
        assertThat(Conversion.IDENTITY.apply(7)).isEqualTo(7);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "NaN, 1", "Infinity, 1", "0, NaN", "0, -Infinity"})
    void whatCannotTurnBackIsNoChangeOfUnit(double offset, double slope) {
        assertThatThrownBy(() -> new Conversion(offset, slope)).hasMessageStartingWith("not a change of unit: offset ");
    }

    @ParameterizedTest
    @CsvSource({"-1e-9", "NaN"})
    void anUncertaintyIsNotNegative(double uncertainty) {
        assertThatThrownBy(() -> new Quantity(1, uncertainty, Unit.PASCAL))
                .hasMessage("standard uncertainty must not be negative, got " + uncertainty);
    }

    @ParameterizedTest
    @CsvSource({
        "inlet, INLET, PRESSURE",
        "Manifold, MANIFOLD, PRESSURE",
        "SUPPLY, SUPPLY, TEMPERATURE",
        "return, RETURN, TEMPERATURE",
        "stack, STACK, TEMPERATURE",
        "supply-static, SUPPLY_STATIC, PRESSURE",
        "return-static, RETURN_STATIC, PRESSURE",
        "o2, OXYGEN, FRACTION",
        "co2, CARBON_DIOXIDE, FRACTION",
        "co, CARBON_MONOXIDE, FRACTION",
        "room-co, ROOM_CARBON_MONOXIDE, FRACTION"
    })
    void rolesGoByTheirWord(String word, Role role, Dimension dimension) {
        assertThat(Role.ofWord(word)).contains(role);
        assertThat(role.word()).isEqualToIgnoringCase(word).isLowerCase();
        assertThat(role.dimension()).isEqualTo(dimension);
        assertThat(Role.ofWord(word + "s")).isEmpty();
    }

    @Test
    void staticPressuresAndGasSharesAreToldApart() {
        assertThat(Stream.of(Role.values()).filter(Role::statics))
                .containsExactly(Role.SUPPLY_STATIC, Role.RETURN_STATIC);
        assertThat(Stream.of(Role.values()).filter(Role::gasAnalysis))
                .containsExactly(Role.OXYGEN, Role.CARBON_DIOXIDE, Role.CARBON_MONOXIDE, Role.ROOM_CARBON_MONOXIDE);
    }

    @ParameterizedTest
    @CsvSource({
        "p1, Pa, INLET, true",
        "p1, Pa, SUPPLY_STATIC, true",
        "p1, Pa, SUPPLY, false",
        "oxygen, %, OXYGEN, true",
        "battery, %, OXYGEN, false",
        "humidity, %, CARBON_MONOXIDE, false",
        "battery, Pa, MANIFOLD, true"
    })
    void aRoleFitsAChannelOfItsDimensionThatIsNoBatteryOrHumidity(
            String name, String unit, Role role, boolean expected) {
        Unit read = Unit.ucum(unit);
        Channel channel = new Channel(name, "", read.dimension(), read, 0.1, Accuracy.UNKNOWN, 0.1, Double.NaN, 0);
        assertThat(role.fits(channel)).isEqualTo(expected);
    }
}
