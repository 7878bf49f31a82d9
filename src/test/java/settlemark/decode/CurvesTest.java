package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.SampleStatus;
import settlemark.profile.Curve;
import settlemark.profile.Field;

/** Polynomials and tables, there and back. Expected values by hand. */
final class CurvesTest {
    private static final Curve.Table RISING = new Curve.Table(List.of(100.0, 200.0, 400.0), List.of(-10.0, 0.0, 50.0));
    private static final Curve.Table FALLING = new Curve.Table(List.of(100.0, 200.0, 400.0), List.of(50.0, 0.0, -10.0));

    @ParameterizedTest
    @CsvSource({"100, -10", "150, -5", "200, 0", "300, 25", "400, 50"})
    void aTableIsStraightBetweenItsPoints(double raw, double value) {
        TableCurve curve = new TableCurve(RISING);
        assertThat(curve.apply(raw)).isEqualTo(value);
        assertThat(curve.inverse(value, 0)).isEqualTo(raw);
        assertThat(curve.reaches(value)).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"100, 50", "150, 25", "200, 0", "300, -5", "400, -10"})
    void aTableMayFall(double raw, double value) {
        TableCurve curve = new TableCurve(FALLING);
        assertThat(curve.apply(raw)).isEqualTo(value);
        assertThat(curve.inverse(value, 0)).isEqualTo(raw);
    }

    @ParameterizedTest
    @CsvSource({
        "99, UNDER_RANGE, OVER_RANGE, OVER_RANGE, UNDER_RANGE",
        "401, OVER_RANGE, UNDER_RANGE, UNDER_RANGE, OVER_RANGE"
    })
    void outsideATableIsOutOfRangeByTheValueThere(
            int raw, SampleStatus rising, SampleStatus risingTurned, SampleStatus falling, SampleStatus fallingTurned) {
        assertThat(new BinaryNumber(Made.number(Made.U16, RISING), 1).statusOf(raw))
                .isEqualTo(rising);
        assertThat(new BinaryNumber(Made.number(Made.U16, RISING), -1).statusOf(raw))
                .isEqualTo(risingTurned);
        assertThat(new BinaryNumber(Made.number(Made.U16, FALLING), 1).statusOf(raw))
                .isEqualTo(falling);
        assertThat(new BinaryNumber(Made.number(Made.U16, FALLING), -1).statusOf(raw))
                .isEqualTo(fallingTurned);
        assertThat(new TableCurve(RISING).apply(Double.NaN)).isNaN();
    }

    @Test
    void aValueOutsideATableIsWrittenAsOutOfRange() {
        for (Curve curve : List.of(RISING, FALLING)) {
            for (int sign : new int[] {1, -1}) {
                BinaryNumber number = new BinaryNumber(Made.number(Made.U16, curve), sign);
                byte[] bytes = new byte[2];
                BinaryCodes.write(number, 1000, bytes, 0);
                assertThat(number.statusOf(number.raw(bytes, 0))).isEqualTo(SampleStatus.OVER_RANGE);
                BinaryCodes.write(number, -1000, bytes, 0);
                assertThat(number.statusOf(number.raw(bytes, 0))).isEqualTo(SampleStatus.UNDER_RANGE);
                assertThat(number.says(SampleStatus.OVER_RANGE)).isTrue();
                assertThat(number.says(SampleStatus.FAULT)).isFalse();
            }
        }
    }

    @Test
    void whereNothingSaysOutOfRangeTheEndOfTheTableIsWritten() {
        Curve.Table all = new Curve.Table(List.of(0.0, 255.0), List.of(0.0, 510.0));
        BinaryNumber number = new BinaryNumber(Made.number(Made.U8, all), 1);
        byte[] bytes = new byte[1];
        BinaryCodes.write(number, 1000, bytes, 0);
        assertThat(bytes).isEqualTo(Made.hex("FF"));
        BinaryCodes.write(number, -1000, bytes, 0);
        assertThat(bytes).isEqualTo(Made.hex("00"));
    }

    @Test
    void aPolynomialGoesThereAndBack() {
        PolynomialCurve curve = new PolynomialCurve(new Curve.Polynomial(List.of(1.0, 2.0, 0.0, 0.5)));
        assertThat(curve.apply(2)).isEqualTo(9);
        assertThat(curve.inverse(9, 0)).isCloseTo(2, within(1e-12));
        assertThat(curve.inverse(9, 2)).isEqualTo(2);
        assertThat(curve.inverse(-1e9, 0)).isCloseTo(-1259.92, within(0.01));
    }

    @Test
    void ofSeveralRootsTheOneNearTheHintIsTaken() {
        PolynomialCurve square = new PolynomialCurve(new Curve.Polynomial(List.of(0.0, 0.0, 1.0)));
        assertThat(square.inverse(25, 7)).isCloseTo(5, within(1e-12));
        assertThat(square.inverse(25, -7)).isCloseTo(-5, within(1e-12));
        assertThat(square.inverse(1e20, 0)).isCloseTo(1e10, within(1e-3));
    }

    @Test
    void whereThereIsNoRootTheNearestIsTaken() {
        PolynomialCurve hill = new PolynomialCurve(new Curve.Polynomial(List.of(10.0, 0.0, -1.0)));
        assertThat(hill.apply(hill.inverse(100, 0))).isEqualTo(10);
        assertThat(hill.apply(hill.inverse(100, 50))).isBetween(-50.0, 10.0);
    }

    /** Any raw number of 16 bits comes back through curves that rise over all of them. */
    @Test
    void anyRawNumberComesBackThroughACurve() {
        long seed = System.nanoTime();
        System.out.println("CurvesTest seed " + seed);
        Random random = new Random(seed);
        Curve polynomial = new Curve.Polynomial(List.of(-40.0, 0.002, 1e-8, 1e-13));
        Curve table = new Curve.Table(List.of(0.0, 1000.0, 30000.0, 65535.0), List.of(-200.0, -50.0, 12.5, 1370.0));
        for (Curve curve : List.of(polynomial, table)) {
            BinaryNumber number = new BinaryNumber(Made.number(Made.U16, curve), -1);
            for (int i = 0; i < 5_000; i++) {
                int raw = random.nextInt(0x10000);
                byte[] bytes = new byte[2];
                BinaryCodes.write(number, number.scaling.value(raw), bytes, 0);
                assertThat(number.raw(bytes, 0)).as("seed %d", seed).isEqualTo(raw);
            }
        }
    }

    @Test
    void textHasCurvesToo() {
        Field.Decimal content =
                new Field.Decimal(RISING, Optional.of(1), true, Map.of(SampleStatus.OVER_RANGE, List.of("OVER")));
        TextNumber number = new TextNumber("p", content, 1);
        assertThat(number.text(-5)).isEqualTo("+150.0");
        assertThat(number.text(1000)).isEqualTo("OVER");
        assertThat(number.text(-1000)).isEqualTo("+100.0");
        FrameValues out = new FrameValues(1, 0);
        byte[] text = "150".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        assertThat(number.read(text, 0, 3, 0, out)).isNull();
        assertThat(out.values[0]).isEqualTo(-5);
        byte[] below = "50".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        assertThat(number.read(below, 0, 2, 0, out)).isNull();
        assertThat(out.statuses[0]).isEqualTo(SampleStatus.UNDER_RANGE);
    }
}
