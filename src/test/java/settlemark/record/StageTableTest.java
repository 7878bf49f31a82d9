package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.job.Limit;
import settlemark.job.Verdict;
import settlemark.measure.Unit;

class StageTableTest {
    @Test
    void valuesUnitsUncertaintiesAndVerdictsStandInAlignedColumns() {
        List<String> lines = StageTable.text(AshLane.job().record()).lines().toList();
        assertThat(lines.get(0)).isEqualTo("SIMULATED");
        assertThat(lines.get(1))
                .contains(
                        "inlet inH\u2082O", "manifold inH\u2082O", "supply \u00B0F", "return \u00B0F", "rise \u00B0F");
        assertThat(lines)
                .anySatisfy(l -> assertThat(l)
                        .startsWith("As found, low fire")
                        .contains("6.97 \u00B10.02 inside", "1.51 \u00B10.02 close, inside", "34.2 \u00B10.6 inside")
                        .endsWith("close, inside"));
        assertThat(lines)
                .anySatisfy(l -> assertThat(l)
                        .startsWith("As found, high fire")
                        .contains("3.12 \u00B10.02 outside", "118.0 \u00B10.5 not settled", "taken by hand"));
        assertThat(lines).contains("  manifold, high fire: 3.15 to 3.85 inH\u2082O (plate)");
        int column = lines.get(1).indexOf("manifold");
        assertThat(lines.subList(2, 8)).allSatisfy(l -> {
            assertThat(l.substring(column - 3, column)).isBlank();
            assertThat(l.charAt(column)).isNotEqualTo(' ');
        });
    }

    @Test
    void whatWasSkippedSaysWhy() {
        assertThat(StageTable.text(AshLane.job().skipping("left-high").record()))
                .containsPattern("As left, high fire +- .*skipped: no access today");
    }

    @Test
    void aTableOfAJobAloneDoesNotClaimToBeSimulated() {
        assertThat(StageTable.text(AshLane.job().record().job())).doesNotContain("SIMULATED");
    }

    /** JCGM 100:2008, 7.2.6: an uncertainty may be rounded up, never down so far that it claims too much. */
    @Test
    void uncertaintiesAreRoundedUpAndValuesToTheSameDecimals() {
        assertThat(Figures.uncertainty(0.0131, 2)).isEqualTo("\u00B10.02");
        assertThat(Figures.uncertainty(0.02, 2)).isEqualTo("\u00B10.02");
        assertThat(Figures.uncertainty(0.1 + 0.2, 1)).isEqualTo("\u00B10.3");
        assertThat(Figures.value(-0.001, 2)).isEqualTo("0.00");
        assertThat(Figures.value(-0.44, 1)).isEqualTo("\u22120.4");
        assertThat(Figures.decimals(0.0186)).isEqualTo(2);
        assertThat(Figures.decimals(0.56)).isEqualTo(1);
        assertThat(Figures.decimals(4.6)).isZero();
        assertThat(Figures.decimals(0)).isEqualTo(2);
        assertThat(Figures.value(Double.NaN, 2)).isEqualTo("none");
    }

    @Test
    void aValueIsNeverPrintedOnTheOtherSideOfItsLimit() {
        Limit limit = Limit.around(3.5, 0.35, Unit.INCH_OF_WATER, "plate");
        Verdict justOutside = Verdict.judge("manifold", 3.8512, 0.001, limit);
        assertThat(Figures.decimals(justOutside, 2)).isEqualTo(3);
        assertThat(Figures.value(3.8512, 3)).isEqualTo("3.851");
        Verdict inside = Verdict.judge("manifold", 3.49, 0.02, limit);
        assertThat(Figures.decimals(inside, 2)).isEqualTo(2);
    }

    @Test
    void limitsAreReadableInAnyUnit() {
        Limit limit = new Limit(4.5, 10.5, Unit.INCH_OF_WATER, "plate");
        assertThat(Figures.limit(limit)).isEqualTo("4.5 to 10.5");
        // 249.08891 Pa an inch (NIST SP 811, conventional inch of water): 1120.90 and 2615.43.
        assertThat(Figures.limit(limit.to(Unit.PASCAL))).isEqualTo("1121 to 2615");
        assertThat(Figures.limit(new Limit(Double.NEGATIVE_INFINITY, 0.05, Unit.PASCAL, "x")))
                .isEqualTo("at most 0.05");
        assertThat(Figures.limit(new Limit(-2, Double.POSITIVE_INFINITY, Unit.PASCAL, "x")))
                .isEqualTo("at least \u22122");
    }
}
