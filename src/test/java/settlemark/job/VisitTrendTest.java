package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/** What was left at each visit, beside what is now; worked by hand. */
final class VisitTrendTest {
    private static final Unit WATER = Unit.INCH_OF_WATER;

    private static Act.Former visit(String when, double inlet, double manifold, double supply) {
        return new Act.Former(
                when,
                List.of(
                        new FormerReading("", Role.INLET, 7.8, 0.06, WATER),
                        new FormerReading("low", Role.INLET, inlet, 0.06, WATER),
                        new FormerReading("low", Role.MANIFOLD, manifold, 0.03, WATER),
                        new FormerReading("low", Role.SUPPLY, supply, 0.6, Unit.FAHRENHEIT),
                        new FormerReading("low", Role.RETURN, 70, 0.6, Unit.FAHRENHEIT)));
    }

    private static Bench foundAfter(Act.Former... visits) {
        Bench bench = new Bench();
        for (Act.Former visit : visits) {
            bench.act(visit);
        }
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-low"));
        bench.firing(1.48, 104);
        bench.pass(400);
        return bench;
    }

    @Test
    void eachValueStandsInTheOrderOfTheVisits() {
        JobState job = foundAfter(visit("2024-03-14", 6.98, 1.70, 105), visit("2025-03-20", 6.95, 1.62, 104))
                .run
                .state();
        assertThat(job.visits()).hasSize(2);
        List<String> words = VisitTrend.of(job);
        // The zero of -0.02 is off: 1.48 reads 1.50, which is 0.20 less than 1.70.
        assertThat(words)
                .anySatisfy(w -> assertThat(w)
                        .startsWith("manifold at low fire: 1.70 on 2024-03-14, 1.62 on 2025-03-20, now 1.50 inH\u2082O")
                        .contains("\u22120.20 since the first"))
                .anySatisfy(w -> assertThat(w)
                        .startsWith("inlet at lock-up: 7.80 on 2024-03-14, 7.80 on 2025-03-20, now 7.80")
                        .contains("no change beyond U"))
                .anySatisfy(w -> assertThat(w).startsWith("rise at low fire: 35"));
        assertThat(job.step("found-low").orElseThrow().remarks())
                .as("the newest visit is the last")
                .anySatisfy(
                        w -> assertThat(w).contains("At the last visit (2025-03-20) the manifold was left at 1.62"));
    }

    @Test
    void aFirstVisitHasNoTrend() {
        assertThat(VisitTrend.of(foundAfter().run.state())).isEmpty();
    }

    @Test
    void visitsInOtherUnitsAreComparedInThoseOfNow() {
        Act.Former pascals = new Act.Former(
                "2024-03-14", List.of(new FormerReading("low", Role.MANIFOLD, 423.45, 7.5, Unit.PASCAL)));
        // 423.45 Pa / 249.08891 Pa an inch (NIST SP 811) = 1.70.
        assertThat(VisitTrend.of(foundAfter(pascals).run.state()))
                .singleElement()
                .asString()
                .startsWith("manifold at low fire: 1.70 on 2024-03-14, now 1.50 inH\u2082O");
    }
}
