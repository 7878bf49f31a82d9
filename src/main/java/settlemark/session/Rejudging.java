package settlemark.session;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import settlemark.job.JobState;
import settlemark.job.SettleForm;
import settlemark.job.SettledBy;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;

/**
 * Judges a stored job again: its readings taken under other settings of settled detection, as {@link WhatIf} does, and their
 * figures held against other limits. Nothing that is stored is touched.
 *
 * @param choices other settings, {@link SettleChoices#NONE} for those of the day
 * @param by by what every step's channels are called settled, empty for what the plan says
 * @param limits in the place of those of the day
 */
public record Rejudging(SettleChoices choices, Optional<SettledBy> by, List<OtherLimit> limits) {
    /** The day's own. */
    public static final Rejudging NONE = new Rejudging(SettleChoices.NONE, Optional.empty(), List.of());

    /** In the place of an outcome where there is none. */
    public static final String NO_VERDICT = "no verdict";

    public Rejudging {
        limits = List.copyOf(limits);
    }

    /** A verdict that is another one now; its outcomes in words. */
    public record Change(String step, String figure, String from, String to) {}

    /** Where a verdict stands: key of its step, and what is judged. */
    public record Place(String step, String figure) {}

    /** Whether nothing is asked. */
    public boolean isNone() {
        return choices.isNone() && by.isEmpty() && limits.isEmpty();
    }

    /**
     * The verdicts that are others.
     *
     * @param keys of probes whose frames are protected
     * @throws IllegalArgumentException where the session has no such figure, in words
     */
    public List<Change> changes(SessionStore store, long session, ProbeKeys keys) throws StoreException {
        RawBytes.require(store, session);
        if (store.header(session).plan().isEmpty()) {
            throw new IllegalArgumentException("session " + session + " is no job: it has no verdicts to judge again");
        }
        List<JobState> jobs = choices.isNone() && by.isEmpty()
                ? List.of(WhatIf.day(store, session, keys))
                : WhatIf.jobs(store, session, choices, by, keys);
        return changes(jobs.get(0), jobs.get(jobs.size() - 1), limits);
    }

    /**
     * The verdicts that are others, of a job that was run through again already.
     *
     * @param day the job as it was
     * @param tried the same with other settings, or the day's where there are none
     * @param limits in the place of those of the day
     * @throws IllegalArgumentException where the job has no such figure, in words
     */
    public static List<Change> changes(JobState day, JobState tried, List<OtherLimit> limits) {
        Map<Place, Verdict> before = verdicts(day);
        Map<Place, Verdict> after = verdicts(tried);
        for (OtherLimit limit : limits) {
            Place place = new Place(limit.step(), limit.figure());
            if (!before.containsKey(place) && !after.containsKey(place)) {
                throw new IllegalArgumentException(unknown(limit, before));
            }
            after.computeIfPresent(place, (p, verdict) -> limit.judge(verdict));
        }
        return changes(before, after);
    }

    private static List<Change> changes(Map<Place, Verdict> before, Map<Place, Verdict> after) {
        Map<Place, Verdict> all = new LinkedHashMap<>(before);
        after.forEach(all::putIfAbsent);
        List<Change> changes = new ArrayList<>();
        for (Place place : all.keySet()) {
            String from = outcome(before, place);
            String to = outcome(after, place);
            if (!from.equals(to)) {
                changes.add(new Change(place.step(), place.figure(), from, to));
            }
        }
        return changes;
    }

    private static String outcome(Map<Place, Verdict> verdicts, Place place) {
        Verdict verdict = verdicts.get(place);
        return verdict == null ? NO_VERDICT : verdict.outcome().word();
    }

    /** A job's verdicts by where they stand, in its order. */
    public static Map<Place, Verdict> verdicts(JobState job) {
        Map<Place, Verdict> verdicts = new LinkedHashMap<>();
        for (StepState step : job.steps()) {
            step.verdicts().forEach(v -> verdicts.put(new Place(step.key(), v.subject()), v));
        }
        return verdicts;
    }

    private static String unknown(OtherLimit limit, Map<Place, Verdict> before) {
        List<String> figures = before.keySet().stream()
                .filter(p -> p.step().equals(limit.step()))
                .map(Place::figure)
                .toList();
        return limit.text() + ": "
                + (figures.isEmpty()
                        ? "no step \"" + limit.step() + "\" has a verdict; there are "
                                + before.keySet().stream()
                                        .map(Place::step)
                                        .distinct()
                                        .collect(Collectors.joining(", "))
                        : "the step \"" + limit.step() + "\" has no verdict on \"" + limit.figure() + "\"; there are "
                                + String.join(", ", figures));
    }

    /** What it asks, one text each, as it is typed. */
    public List<String> under() {
        List<String> under = new ArrayList<>();
        choices.adjustments().forEach((kind, set) -> under.addAll(under(kind, set)));
        by.flatMap(SettledBy::rule)
                .ifPresent(rule -> under.add("rule " + rule.key() + (by.get().alone() ? " alone" : "")));
        limits.forEach(l -> under.add(l.text()));
        return under;
    }

    private static List<String> under(SettleKind kind, SettleAdjustment set) {
        String name = SettleForm.word(kind);
        String unit = " " + SettleForm.unit(kind).code();
        List<String> under = new ArrayList<>();
        add(under, name + ".drift=", set.driftLimit(), unit);
        add(under, name + ".band=", set.band(), unit);
        add(under, name + ".horizon=", set.horizonSeconds(), "");
        if (!set.windowSeconds().isEmpty()) {
            under.add(name + ".windows="
                    + set.windowSeconds().stream().map(Rejudging::number).collect(Collectors.joining(",")));
        }
        add(under, name + ".dwell=", set.dwellSeconds(), "");
        add(under, name + ".hunting=", set.huntingSeconds(), "");
        return under;
    }

    private static void add(List<String> under, String name, double value, String unit) {
        if (!Double.isNaN(value)) {
            under.add(name + number(value) + unit);
        }
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.6g", value)
                .replaceAll("(\\.\\d*?)0+$", "$1")
                .replaceAll("\\.$", "");
    }
}
