package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import settlemark.job.JobState;
import settlemark.job.Verdict;
import settlemark.measure.Unit;
import settlemark.session.OtherLimit;
import settlemark.session.Rejudging;
import settlemark.session.Rejudging.Place;
import settlemark.session.SnapshotUnits;
import settlemark.ui.LimitsTyped.Ends;
import settlemark.ui.LimitsTyped.Field;
import settlemark.ui.LimitsTyped.Read;
import settlemark.ui.LimitsTyped.Row;

/** Limits typed in a review: the units they are typed in, what is wrong with them, and that they are the command line's. */
final class LimitsTypedTest {
    private static final Place MANIFOLD = new Place("left-low", "manifold");
    private static final Place RISE = new Place("left-low", "rise");
    private static final JobState JOB = Objects.requireNonNull(Shots.all().get("08-left-high-armed"))
            .get()
            .snapshot()
            .job()
            .orElseThrow();
    private static final SnapshotUnits METRIC = new SnapshotUnits(Unit.ucum("mbar"), Unit.CELSIUS);

    private static LimitsTyped inches(OtherLimit... kept) {
        return new LimitsTyped(JOB, JOB, UnaryOperator.identity(), List.of(kept));
    }

    private static Row row(LimitsTyped typed, Place place) {
        return typed.rows().stream()
                .filter(r -> r.place().equals(place))
                .findFirst()
                .orElseThrow(() -> new AssertionError(place + " among " + typed.rows()));
    }

    private static Verdict day(Place place) {
        return Objects.requireNonNull(Rejudging.verdicts(JOB).get(place));
    }

    private static List<String> texts(Read read) {
        return read.limits().stream().map(OtherLimit::text).toList();
    }

    @Test
    void everyVerdictOfTheJobHasARowAndUntouchedTextsAreTheDay() {
        for (LimitsTyped typed : List.of(inches(), new LimitsTyped(JOB, JOB, METRIC::shown, List.of()))) {
            assertThat(typed.rows())
                    .extracting(Row::place)
                    .containsExactlyElementsOf(Rejudging.verdicts(JOB).keySet());
            Map<Place, Ends> shown = new HashMap<>();
            typed.rows().forEach(r -> shown.put(r.place(), r.kept()));
            Read read = typed.read(shown);
            assertThat(read.limits()).isEmpty();
            assertThat(read.problems()).isEmpty();
            assertThat(read.verdicts()).isEqualTo(Rejudging.verdicts(JOB));
        }
    }

    @Test
    void aLimitIsTypedInTheUnitsShownAndIsWhatTheCommandLineTakes() {
        // Left at 1.70 inH2O, which are 4.23 mbar (1 inH2O is 2.4908891 mbar).
        assertThat(day(MANIFOLD).value()).isBetween(1.65, 1.75);
        Read inInches = inches().read(Map.of(MANIFOLD, new Ends("1.9", "2.1")));
        assertThat(texts(inInches)).containsExactly("left-low.manifold=1.9..2.1 [in_i'H2O]");
        assertThat(Objects.requireNonNull(inInches.verdicts().get(MANIFOLD))
                        .outcome()
                        .word())
                .isEqualTo("outside");

        LimitsTyped metric = new LimitsTyped(JOB, JOB, METRIC::shown, List.of());
        Read inMbar = metric.read(Map.of(MANIFOLD, new Ends(" 4.0 ", "+5")));
        assertThat(texts(inMbar)).containsExactly("left-low.manifold=4.0..+5 mbar");
        assertThat(Objects.requireNonNull(inMbar.verdicts().get(MANIFOLD))
                        .outcome()
                        .word())
                .isEqualTo("inside");
        assertThat(OtherLimit.of(texts(inMbar).get(0)))
                .isEqualTo(inMbar.limits().get(0));
    }

    @Test
    void aRiseIsADifferenceWithoutTheScalesOffset() {
        double kelvin = day(RISE).value() / 1.8;
        LimitsTyped metric = new LimitsTyped(JOB, JOB, METRIC::shown, List.of());
        assertThat(row(metric, RISE).unit().symbol()).isEqualTo("\u00b0C");
        Read read = metric.read(
                Map.of(RISE, new Ends(Numbers.plain(Math.floor(kelvin) - 5), Numbers.plain(Math.ceil(kelvin) + 5))));
        assertThat(read.problems()).isEmpty();
        assertThat(texts(read).get(0)).startsWith("left-low.rise=").endsWith(" Cel");
        assertThat(Objects.requireNonNull(read.verdicts().get(RISE)).outcome().word())
                .isEqualTo("inside");
    }

    @Test
    void anEndThatIsEmptyIsOpen() {
        Read read = inches().read(Map.of(MANIFOLD, new Ends("", "1.2")));
        assertThat(texts(read)).containsExactly("left-low.manifold=..1.2 [in_i'H2O]");
        assertThat(read.limits().get(0).lower()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    @Test
    void whatIsWrongIsSaidAtItsFieldAndNothingOfThatRowIsKept() {
        for (String wrong : List.of("abc", "3,5", "1e3", "NaN", "0x1", "1.", "9".repeat(400))) {
            Read read = inches().read(Map.of(MANIFOLD, new Ends("1.5", wrong), RISE, new Ends("20", "90")));
            assertThat(read.problems().keySet()).as(wrong).containsExactly(new Field(MANIFOLD, true));
            assertThat(read.limits()).extracting(OtherLimit::figure).containsExactly("rise");
        }
        assertThat(inches().read(Map.of(MANIFOLD, new Ends("2", "1"))).problems())
                .containsExactly(Map.entry(new Field(MANIFOLD, false), "the least lies above the most"));
        assertThat(inches().read(Map.of(MANIFOLD, new Ends("", " "))).problems())
                .containsExactly(Map.entry(new Field(MANIFOLD, false), "a limit has one end at least"));
        assertThat(inches().read(Map.of(MANIFOLD, new Ends("x", "y"))).problems())
                .hasSize(2);
    }

    @Test
    void aLimitThatWasKeptStaysInTheUnitThatItWasTypedIn() {
        OtherLimit kept = OtherLimit.of("left-low.manifold=4..5 mbar");
        LimitsTyped again = inches(kept);
        Row row = row(again, MANIFOLD);
        assertThat(row.unit().code()).isEqualTo("mbar");
        assertThat(row.kept()).isEqualTo(new Ends("4", "5"));
        assertThat(texts(again.read(Map.of(MANIFOLD, row.kept())))).containsExactly("left-low.manifold=4..5 mbar");
        assertThat(again.read(Map.of(MANIFOLD, row.day())).limits()).isEmpty();
        Row rise = row(inches(OtherLimit.of("left-low.rise=20..50 Cel")), RISE);
        assertThat(rise.unit()).isEqualTo(Unit.CELSIUS.difference());
    }

    @Test
    void theChangesAreThoseThatAreSigned() {
        Read read = inches().read(Map.of(MANIFOLD, new Ends("1.9", "2.1"), RISE, new Ends("-40", "400")));
        assertThat(Rejudging.changes(JOB, JOB, read.limits()))
                .extracting(c -> c.step() + " " + c.figure() + " " + c.to())
                .contains("left-low manifold outside");
    }
}
