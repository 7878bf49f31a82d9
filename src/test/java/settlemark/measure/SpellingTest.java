package settlemark.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SpellingTest {
    /**
     * Factors: NIST SP 811 (2008), appendix B.8, where exact ones stand for inch, foot, pound, gallon and the
     * international table's Btu; products and quotients of them by hand; temperatures by definition.
     */
    @ParameterizedTest
    @CsvSource(textBlock = """
            inH2O,     1,   Pa,    249.08891
            inWC,      1,   Pa,    249.08891
            inWG,      1,   Pa,    249.08891
            inH₂O,     1,   Pa,    249.08891
            mmH2O,     1,   Pa,    9.80665
            inHg,      1,   Pa,    3386.389
            psi,       1,   Pa,    6894.757
            psia,      1,   Pa,    6894.757
            PSIG,      1,   Pa,    6894.757
            degF,      212, Cel,   100
            °F,        212, Cel,   100
            F,         212, Cel,   100
            degC,      10,  [degF],50
            °C,        10,  [degF],50
            C,         10,  [degF],50
            in,        1,   m,     0.0254
            inch,      1,   m,     0.0254
            ft,        1,   m,     0.3048
            in2,       1,   m2,    6.4516e-4
            ft2,       1,   m2,    0.09290304
            ft3,       1,   m3,    0.028316846592
            ft³,       1,   m3,    0.028316846592
            cf,        1,   m3,    0.028316846592
            ft3/h,     1,   m3/h,  0.028316846592
            cfh,       1,   m3/h,  0.028316846592
            ft3/min,   1,   m3/h,  1.69901079552
            CFM,       1,   m3/h,  1.69901079552
            gal,       1,   L,     3.785411784
            gal/min,   1,   L/min, 3.785411784
            gpm,       1,   L/min, 3.785411784
            gal/h,     60,  L/min, 3.785411784
            l/min,     60,  m3/h,  3.6
            l/h,       1000,m3/h,  1
            lb,        1,   kg,    0.45359237
            lb/h,      1,   kg/h,  0.45359237
            lb/ft3,    1,   kg/m3, 16.018463
            Btu,       1,   J,     1055.05585262
            Btu/h,     1,   W,     0.2930711
            btuh,      1,   W,     0.2930711
            kBtu/h,    1,   kW,    0.2930711
            Btu/ft3,   1,   MJ/m3, 0.03725895
            Btu/cf,    1,   MJ/m3, 0.03725895
            kWh,       1,   MJ,    3.6
            kWh/m3,    1,   MJ/m3, 3.6
            ppm,       1e6, 1,     1
            sec,       1,   s,     1
            hr,        1,   s,     3600
            percent,   1,   1,     0.01
            mbar,      1,   Pa,    100
            ' mbar ',  1,   Pa,    100
            [degF],    212, Cel,   100
            """)
    void theTradeSpellsItsUnitsSo(String text, double value, String target, double expected) {
        assertThat(Spelling.unit(text).orElseThrow().to(Unit.ucum(target)).apply(value))
                .isCloseTo(expected, within(Math.abs(expected) * 2e-7));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "inches", "psi g", "[DEGF]", "bogus"})
    void whatIsNeitherIsNoUnit(String text) {
        assertThat(Spelling.unit(text)).isEmpty();
    }

    @Test
    void theInchOfMercuryIsTheConventionalOne() {
        assertThat(Spelling.unit("inHg")).contains(Unit.inchOfMercury());
        // NIST SP 811, B.8: the conventional inch is 3.386389 E+03 Pa; UCUM's own code stands for another.
        assertThat(Unit.inchOfMercury().to(Unit.PASCAL).slope()).isCloseTo(3386.389, within(0.0005));
        assertThat(Unit.ucum("[in_i'Hg]").to(Unit.PASCAL).slope()).isLessThan(3386.38);
    }
}
