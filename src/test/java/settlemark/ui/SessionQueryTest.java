package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.chart.Mark;
import settlemark.job.Outcome;
import settlemark.session.Rejudging;
import settlemark.session.SessionStore;

class SessionQueryTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 26);

    private static SessionLine line(String title, String day, Optional<Outcome> worst, boolean complete) {
        Instant at = Instant.parse(day + "T10:00:00Z");
        SessionStore.Summary summary = new SessionStore.Summary(1, "key", title, at, true, false, 1);
        return new SessionLine(
                Path.of("w"),
                summary,
                at.atZone(ZoneOffset.UTC),
                "two stage furnace",
                "yearly check",
                Optional.of(new SessionLine.Steps(List.of(Mark.INSIDE), worst, complete)),
                Optional.empty());
    }

    private static final SessionLine INSIDE = line("Ash Lane 12", "2026-11-25", Optional.of(Outcome.INSIDE), true);
    private static final SessionLine OUTSIDE = line("Mill Row 3", "2026-09-30", Optional.of(Outcome.OUTSIDE), true);
    private static final SessionLine OLD = line("Ash Lane 12", "2025-12-03", Optional.of(Outcome.CLOSE_OUTSIDE), false);
    private static final SessionLine RETURNED = OUTSIDE.with(new ReviewHost.Said(false, "A. Second", "rise too early"));
    private static final List<SessionLine> ALL = List.of(INSIDE, OUTSIDE, OLD);

    private static List<SessionLine> found(String text) {
        SessionQuery query = SessionQuery.of(text, TODAY);
        assertThat(query.problem()).isEmpty();
        return ALL.stream().filter(query::fits).toList();
    }

    @Test
    void howAJobCameOutIsReadFromItsText() {
        for (SessionLine.Steps steps : List.of(
                new SessionLine.Steps(List.of(), Optional.empty(), false),
                new SessionLine.Steps(
                        List.of(Mark.INSIDE, Mark.NOT_TAKEN, Mark.CLOSE), Optional.of(Outcome.CLOSE_OUTSIDE), true))) {
            assertThat(SessionLine.Steps.read(steps.text())).contains(steps);
        }
        for (String wrong : List.of("", ";", "INSIDE;INSIDE;true;", "INWARDS;;true", ";INWARDS;true")) {
            assertThat(SessionLine.Steps.read(wrong)).as(wrong).isEmpty();
        }
    }

    @Test
    void nothingTypedFindsAll() {
        assertThat(found("  ")).isEqualTo(ALL);
    }

    @Test
    void wordsAreLookedForInTitleApplianceAndPlanWhateverTheirCase() {
        assertThat(found("ASH")).containsExactly(INSIDE, OLD);
        assertThat(found("furnace yearly mill")).containsExactly(OUTSIDE);
        assertThat(found("boiler")).isEmpty();
    }

    @Test
    void aVerdictIsAWordAndUnfinishedIsOneToo() {
        assertThat(found("outside")).containsExactly(OUTSIDE);
        assertThat(found("close")).containsExactly(OLD);
        assertThat(found("inside")).containsExactly(INSIDE);
        assertThat(found("unfinished")).containsExactly(OLD);
        assertThat(found("simulated")).isEmpty();
        assertThat(found("log")).isEmpty();
    }

    @Test
    void whatASecondPersonSaidIsFound() {
        SessionQuery returned = SessionQuery.of("returned", TODAY);
        assertThat(returned.fits(RETURNED)).isTrue();
        assertThat(returned.fits(OUTSIDE)).as("nobody has said a word").isFalse();
        assertThat(SessionQuery.of("accepted", TODAY).fits(RETURNED)).isFalse();
        assertThat(RETURNED.reviewed()).isEqualTo("returned by A. Second: rise too early");
        assertThat(RETURNED.judgedAgain()).isEmpty();
        List<String> under = List.of("left-high.rise=35..60 [degF]");
        SessionLine same = RETURNED.with(new ReviewHost.Said(true, "A. Second", "", under, List.of()));
        assertThat(same.judgedAgain()).isEqualTo("judged again: no verdict is another");
        SessionLine other = RETURNED.with(new ReviewHost.Said(
                true, "A. Second", "", under, List.of(new Rejudging.Change("left-high", "rise", "inside", "outside"))));
        assertThat(other.judgedAgain()).isEqualTo("judged again: 1 verdict became another");
    }

    @Test
    void daysMonthsAndYearsAreFoundAloneAndAsBounds() {
        assertThat(found("2026-11-25")).containsExactly(INSIDE);
        assertThat(found("on 2026-09")).containsExactly(OUTSIDE);
        assertThat(found("2025")).containsExactly(OLD);
        assertThat(found("since 2026-09-30")).containsExactly(INSIDE, OUTSIDE);
        assertThat(found("until Sep")).containsExactly(OUTSIDE, OLD);
        assertThat(found("since Oct")).containsExactly(INSIDE);
    }

    @Test
    void aMonthThatHasNotBegunThisYearIsLastYears() {
        assertThat(found("December")).containsExactly(OLD);
    }

    @Test
    void everythingTypedMustFit() {
        assertThat(found("ash outside")).isEmpty();
        assertThat(found("ash since 2026")).containsExactly(INSIDE);
    }

    @Test
    void aBoundWithoutADayIsToldAndFiltersNothing() {
        for (String text : List.of("since", "until yesterweek", "on 2026-13-40")) {
            SessionQuery query = SessionQuery.of(text, TODAY);
            assertThat(query.problem()).contains("comes a day, such as 2026-11-25");
            assertThat(ALL).allMatch(query::fits);
        }
    }
}
