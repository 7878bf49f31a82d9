package settlemark.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class UnitTest {
    /** Factors: NIST SP 811 (2008), appendix B.8; Celsius and Fahrenheit by definition. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            1,    [in_i'H2O], Pa,     249.08891
            1,    [psi],      Pa,     6894.757293
            1,    mbar,       Pa,     100
            1,    mm[H2O],    Pa,     9.80665
            10,   Cel,        [degF], 50
            212,  [degF],     Cel,    100
            -40,  [degF],     Cel,    -40
            300,  K,          Cel,    26.85
            12.5, %,          1,      0.125
            """)
    void convertsValues(double value, String from, String to, double expected) {
        assertThat(Unit.ucum(from).to(Unit.ucum(to)).apply(value))
                .isCloseTo(expected, within(Math.abs(expected) * 1e-9 + 1e-9));
    }

    @Test
    void aDifferenceOfTemperaturesLeavesTheOffsetOut() {
        assertThat(Unit.CELSIUS.difference().to(Unit.FAHRENHEIT_DIFFERENCE).apply(10))
                .isCloseTo(18, within(1e-12));
        assertThat(Unit.CELSIUS.to(Unit.FAHRENHEIT).applyDifference(10)).isCloseTo(18, within(1e-12));
        assertThatThrownBy(() -> Unit.CELSIUS.difference().to(Unit.FAHRENHEIT))
                .hasMessageContaining("TEMPERATURE_DIFFERENCE");
    }

    /** The points where both scales are fixed: 0 Cel is 273.15 K, 0 degF is 459.67 degrees of 5/9 K. */
    @ParameterizedTest
    @CsvSource({"K, 0, 1", "Cel, 273.15, 1", "[degF], 255.37222222222222, 0.5555555555555556"})
    void aTemperatureScaleHasItsZeroAndItsDegree(String code, double zeroKelvin, double degreeKelvin) {
        Conversion toKelvin = UcumReader.read(code).toBase();
        assertThat(toKelvin.offset()).isCloseTo(zeroKelvin, within(1e-10));
        assertThat(toKelvin.slope()).isCloseTo(degreeKelvin, within(1e-14));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1",
                "%",
                "[ppm]",
                "Pa",
                "kPa",
                "mbar",
                "[psi]",
                "[in_i'H2O]",
                "mm[H2O]",
                "K",
                "Cel",
                "[degF]",
                "V",
                "A",
                "m",
                "mm",
                "[in_i]",
                "[ft_i]",
                "m3",
                "[cft_i]",
                "s",
                "min",
                "m3/s",
                "m3/h",
                "[cft_i]/h",
                "[cft_i]/min",
                "kg/m3",
                "[lb_av]/[cft_i]",
                "kg/s",
                "kg/h",
                "[lb_av]/h",
                "W",
                "kW",
                "[Btu_IT]/h",
                "J/m3",
                "MJ/m3",
                "[Btu_IT]/[cft_i]",
                "J/(kg.K)",
                "J/(m3.K)",
                "Pa/K"
            })
    void aCommonUnitIsWhatTheLibrarySaysToTheLastDigit(String code) {
        assertThat(CommonUnits.find(code)).isEqualTo(UcumReader.read(code));
        assertThat(Unit.ucum(code).code()).isEqualTo(code);
    }

    @Test
    void aUnitThatIsNotCommonIsAskedFor() {
        assertThat(CommonUnits.find("m[H2O]")).isNull();
        assertThat(Unit.ucum("m[H2O]").to(Unit.PASCAL).slope()).isCloseTo(9806.65, within(1e-9));
    }

    @Test
    void theInchesOfWaterAreApart() {
        double conventional = Unit.INCH_OF_WATER.to(Unit.PASCAL).slope();
        assertThat(Unit.inchOfWaterAt4C().to(Unit.PASCAL).slope()).isEqualTo(249.082);
        assertThat(Unit.inchOfWaterAt60F().to(Unit.PASCAL).slope()).isEqualTo(248.840);
        assertThat(conventional / Unit.inchOfWaterAt20C().to(Unit.PASCAL).slope())
                .isCloseTo(1.0018, within(1e-4));
    }

    @Test
    void differentMeasuresDoNotConvert() {
        assertThatThrownBy(() -> Unit.PASCAL.to(Unit.CELSIUS))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("PRESSURE")
                .hasMessageContaining("TEMPERATURE");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "bogus",
                "[psi",
                "",
                " ",
                "inH2O",
                "in H2O",
                "%%",
                "m65535",
                "%99999",
                "[psi]-1000",
                "[in_i'H2O]65535"
            })
    void aCodeThatCannotBeReadIsNamedWithTheRemedy(String code) {
        assertThatThrownBy(() -> Unit.ucum(code))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("UCUM")
                .hasMessageContaining("\"" + code + "\"");
        assertThat(Unit.find(code)).isEmpty();
    }

    @Test
    void numbersAreStillFactorsAndSmallPowersStillPowers() {
        assertThat(Unit.ucum("24884.Pa/100").to(Unit.PASCAL).slope())
                .isCloseTo(248.84, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(Unit.find("kg.m-1.s-2").map(Unit::dimension)).contains(Dimension.PRESSURE);
    }

    @Test
    void quantitiesCarryTheirUncertaintyAlong() {
        Quantity celsius = new Quantity(20, 0.5, Unit.CELSIUS);
        Quantity fahrenheit = celsius.to(Unit.FAHRENHEIT);
        assertThat(fahrenheit.value()).isCloseTo(68, within(1e-9));
        assertThat(fahrenheit.standardUncertainty()).isCloseTo(0.9, within(1e-12));
        assertThat(fahrenheit.expandedUncertainty()).isCloseTo(1.8, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "mbar, PRESSURE",
        "K, TEMPERATURE",
        "%, FRACTION",
        "mV, VOLTAGE",
        "mA, CURRENT",
        "mm, LENGTH",
        "cm2, AREA",
        "L, VOLUME",
        "min, TIME",
        "L/min, VOLUME_FLOW",
        "g, MASS",
        "kg/h, MASS_FLOW",
        "kg/m3, DENSITY",
        "kW.h, ENERGY",
        "kW, POWER",
        "kJ/kg/K, SPECIFIC_HEAT",
        "MJ/m3, PRESSURE",
        "cd, OTHER"
    })
    void aCodeSaysWhatItMeasures(String code, Dimension dimension) {
        assertThat(Unit.ucum(code).dimension()).isEqualTo(dimension);
        assertThat(Unit.ucum(code).code()).isEqualTo(code);
        assertThat(Unit.ucum(code)).hasToString(code);
    }

    @Test
    void onlyTheUnitItselfConvertsWhereTheMeasureIsUnknown() {
        Unit candela = Unit.ucum("cd");
        assertThat(candela.to(candela)).isEqualTo(Conversion.IDENTITY);
        assertThatThrownBy(() -> candela.to(Unit.ucum("mol"))).hasMessage("cannot convert cd (OTHER) to mol (OTHER)");
    }

    @Test
    void aUnitBecomesItselfWithoutRounding() {
        assertThat(Unit.FAHRENHEIT.to(Unit.FAHRENHEIT)).isEqualTo(Conversion.IDENTITY);
        assertThat(Unit.INCH_OF_WATER.to(Unit.INCH_OF_WATER)).isEqualTo(Conversion.IDENTITY);
    }

    @Test
    void unitsAreEqualByCodeAndMeasure() {
        assertThat(Unit.ucum("Pa")).isEqualTo(Unit.PASCAL).hasSameHashCodeAs(Unit.PASCAL);
        assertThat(Unit.inchOfWaterAt4C()).isEqualTo(Unit.inchOfWaterAt4C());
        assertThat(Unit.CELSIUS.difference()).isEqualTo(Unit.CELSIUS.difference());
        assertThat(Unit.CELSIUS.difference())
                .isNotEqualTo(Unit.CELSIUS)
                .doesNotHaveSameHashCodeAs(Unit.CELSIUS)
                .hasToString("Cel");
        assertThat(Unit.PASCAL).isNotEqualTo(Unit.ucum("kPa")).isNotEqualTo("Pa");
        assertThat(Unit.PASCAL.difference()).isSameAs(Unit.PASCAL);
    }

    @Test
    void symbolsAreThoseOfTheTradeWhereItHasOne() {
        assertThat(Unit.INCH_OF_WATER.symbol()).isEqualTo("inH\u2082O");
        assertThat(Unit.inchOfWaterAt60F().symbol()).startsWith("inH\u2082O (60");
        assertThat(Unit.FAHRENHEIT_DIFFERENCE.symbol()).isEqualTo("\u00b0F");
        assertThat(Unit.ucum("mbar").symbol()).isEqualTo("mbar");
    }

    @Test
    void aCodeHasAtMostEightyCharacters() {
        String eighty = "Pa" + ".1".repeat(39);
        assertThat(Unit.ucum(eighty).to(Unit.PASCAL).slope()).isEqualTo(1);
        assertThat(Unit.find("m" + eighty)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u0002m", "m\u0000", " Pa", "\u00B5m", "Pa\t"})
    void onlyPrintableCharactersMakeACode(String code) {
        assertThat(Unit.find(code)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Pa.Cel/K", "J/kg/Cel", "dB", "Np"})
    void aScaleWithAnOffsetInAProductAndALogarithmAreRefused(String code) {
        assertThatThrownBy(() -> Unit.ucum(code))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("unit must be a UCUM code such as ")
                .hasMessageContaining("\"" + code + "\"");
        assertThat(Unit.find(code)).isEmpty();
    }
}
