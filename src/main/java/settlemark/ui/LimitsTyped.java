package settlemark.ui;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Unit;
import settlemark.session.OtherLimit;
import settlemark.session.Rejudging;
import settlemark.session.Rejudging.Place;

/**
 * Limits of a stored job as texts, in the units that it is shown in, and what other texts make of its verdicts. Texts that
 * were not touched are the limit of the day.
 */
final class LimitsTyped {
    private static final Pattern NUMBER = Pattern.compile("[-+]?\\d+(\\.\\d+)?");

    /** Digits of a limit of the day; more where fewer would give another verdict. */
    private static final int LEAST_DIGITS = 6;

    private static final int MOST_DIGITS = 17;

    private final List<Row> rows = new ArrayList<>();

    /** @param high the upper end, else the lower */
    record Field(Place place, boolean high) {}

    /** What is typed at a row; empty where that end is open. */
    record Ends(String low, String high) {}

    /**
     * A verdict that can be held against another limit.
     *
     * @param title of its step, as the plan says it
     * @param verdict under the settings that are tried, with the limit of the day
     * @param before how it came out on the day, in the words of an outcome
     * @param unit of the texts
     * @param day the limit of the day as texts
     * @param kept what was kept in its place before
     */
    record Row(Place place, String title, Verdict verdict, String before, Unit unit, Ends day, Ends kept) {}

    /**
     * What the texts say.
     *
     * @param limits that are others, in the order of the rows
     * @param problems what is wrong, by the field that it is said at; where there are any, nothing may be kept
     * @param verdicts under the limits that can be read
     */
    record Read(List<OtherLimit> limits, Map<Field, String> problems, Map<Place, Verdict> verdicts) {}

    /**
     * @param day the job as it was
     * @param tried the same under other settings of settled, or the day's
     * @param shown the unit that values of a unit are shown in
     * @param kept other limits that were kept before; each stays in the unit that it was typed in
     */
    LimitsTyped(JobState day, JobState tried, UnaryOperator<Unit> shown, List<OtherLimit> kept) {
        Map<Place, Verdict> before = Rejudging.verdicts(day);
        Map<Place, OtherLimit> others = new LinkedHashMap<>();
        kept.forEach(l -> others.put(new Place(l.step(), l.figure()), l));
        Rejudging.verdicts(tried).forEach((place, verdict) -> {
            Optional<StepState> step = tried.step(place.step());
            if (step.filter(s -> !s.superseded()).isPresent()) {
                String came =
                        before.containsKey(place) ? before.get(place).outcome().word() : Rejudging.NO_VERDICT;
                rows.add(row(place, step.get(), verdict, came, shown, Optional.ofNullable(others.get(place))));
            }
        });
    }

    private static Row row(
            Place place,
            StepState step,
            Verdict verdict,
            String before,
            UnaryOperator<Unit> shown,
            Optional<OtherLimit> kept) {
        Unit unit = kept.flatMap(OtherLimit::unit)
                .map(code -> unit(code, verdict))
                .orElseGet(() -> shown.apply(verdict.limit().unit()));
        Ends day = day(place, verdict, unit);
        Ends now = kept.map(k -> new Ends(number(k.lower(), MOST_DIGITS), number(k.upper(), MOST_DIGITS)))
                .orElse(day);
        return new Row(place, step.step().title(), verdict, before, unit, day, now);
    }

    private static Unit unit(String code, Verdict verdict) {
        Unit unit = Unit.ucum(code);
        return unit.dimension() == verdict.limit().unit().dimension() ? unit : unit.difference();
    }

    /** With as few digits as give the verdict of the day. */
    private static Ends day(Place place, Verdict verdict, Unit unit) {
        var limit = verdict.limit().to(unit);
        for (int digits = LEAST_DIGITS; ; digits++) {
            Ends ends = new Ends(number(limit.lower(), digits), number(limit.upper(), digits));
            if (digits == MOST_DIGITS || other(place, ends, unit).judge(verdict).outcome() == verdict.outcome()) {
                return ends;
            }
        }
    }

    private static String number(double value, int digits) {
        if (!Double.isFinite(value)) {
            return "";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(digits));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private static OtherLimit other(Place place, Ends ends, Unit unit) {
        return OtherLimit.of(
                place.step() + "." + place.figure() + "=" + ends.low() + ".." + ends.high() + " " + unit.code());
    }

    List<Row> rows() {
        return List.copyOf(rows);
    }

    /** What is typed, with all that is wrong about it. */
    Read read(Map<Place, Ends> texts) {
        List<OtherLimit> limits = new ArrayList<>();
        Map<Field, String> problems = new LinkedHashMap<>();
        Map<Place, Verdict> verdicts = new LinkedHashMap<>();
        for (Row row : rows) {
            Ends typed = texts.getOrDefault(row.place(), row.day());
            Ends ends = new Ends(plain(typed.low()), plain(typed.high()));
            verdicts.put(row.place(), row.verdict());
            if (ends.equals(row.day())) {
                continue;
            }
            Map<Field, String> wrong = problems(row.place(), ends);
            problems.putAll(wrong);
            if (wrong.isEmpty()) {
                OtherLimit other = other(row.place(), ends, row.unit());
                limits.add(other);
                verdicts.put(row.place(), other.judge(row.verdict()));
            }
        }
        return new Read(List.copyOf(limits), Map.copyOf(problems), Map.copyOf(verdicts));
    }

    /** A minus may be the true one, as the window shows it. */
    private static String plain(String text) {
        return text.strip().replace(Numbers.MINUS, "-");
    }

    private static Map<Field, String> problems(Place place, Ends ends) {
        Map<Field, String> problems = new LinkedHashMap<>();
        number(place, false, ends.low(), problems);
        number(place, true, ends.high(), problems);
        if (problems.isEmpty() && ends.low().isEmpty() && ends.high().isEmpty()) {
            problems.put(new Field(place, false), Words.say("a limit has one end at least"));
        }
        if (problems.isEmpty()
                && !ends.low().isEmpty()
                && !ends.high().isEmpty()
                && Double.parseDouble(ends.low()) > Double.parseDouble(ends.high())) {
            problems.put(new Field(place, false), Words.say("the least lies above the most"));
        }
        return problems;
    }

    private static void number(Place place, boolean high, String text, Map<Field, String> problems) {
        boolean right = NUMBER.matcher(text).matches() && Double.isFinite(Double.parseDouble(text));
        if (!text.isEmpty() && !right) {
            problems.put(
                    new Field(place, high), Words.say("type a number with a point, such as 0.01; got \"{0}\"", text));
        }
    }
}
