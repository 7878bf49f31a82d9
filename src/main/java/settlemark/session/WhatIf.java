package settlemark.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.job.SettledBy;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleEvent;
import settlemark.settle.StageReading;

/**
 * Runs a stored session again with other settings of the detectors, beside itself with the day's own. The person's acts stay
 * those of the day: what would not have settled before they went on is read as it stood when the day read it, and is said not
 * to be settled.
 */
public final class WhatIf {
    /** Why a reading was taken that would not have taken itself. */
    private static final String WENT_ON = "the person went on";
    /** Readings that nobody waits for: they are taken with what they lead to. */
    private static final Set<String> BY_THE_WAY = Set.of("adjusted", "start");

    private final SessionStore store;
    private final long session;
    private final ProbeKeys keys;

    private WhatIf(SessionStore store, long session, ProbeKeys keys) {
        this.store = store;
        this.session = session;
        this.keys = keys;
    }

    /** @param nth of the readings of that step and purpose, since a step may be read more than once */
    private record Place(String step, String purpose, int nth, Role role) {}

    /** A settled stretch of a channel. */
    private record Stretch(long fromNanos, long toNanos, WhatIfReport.Value value) {
        boolean overlaps(Stretch other) {
            return fromNanos < other.toNanos && other.fromNanos < toNanos;
        }
    }

    private record Replayed(LiveSession pipeline, List<StageReading> readings) {
        JobState job() {
            return pipeline.job().orElseThrow();
        }
    }

    /**
     * The session as it would be with what is set, and what is not set as it was on the day.
     *
     * @param by by what every step's channels are called settled, empty for what the plan says
     * @param keys of probes whose frames are protected
     */
    public static WhatIfReport run(
            SessionStore store, long session, SettleChoices choices, Optional<SettledBy> by, ProbeKeys keys)
            throws StoreException {
        return tried(store, session, choices, by, keys).report();
    }

    /**
     * @param report what becomes another
     * @param job as it would be, empty of a log
     */
    public record Tried(WhatIfReport report, Optional<JobState> job) {}

    /** As {@link #run} says, with the job that comes of it. */
    public static Tried tried(
            SessionStore store, long session, SettleChoices choices, Optional<SettledBy> by, ProbeKeys keys)
            throws StoreException {
        RawBytes.require(store, session);
        Both both = new WhatIf(store, session, keys).both(choices, by);
        if (store.header(session).plan().isEmpty()) {
            return new Tried(
                    new WhatIfReport(session, false, stretches(both.before(), both.after()), 0), Optional.empty());
        }
        List<StageReading> before = both.before().readings();
        int otherThanStored =
                ReadingChange.between(store.readings(session), before).size();
        return new Tried(
                new WhatIfReport(session, true, readings(before, both.after().readings()), otherThanStored),
                Optional.of(both.after().job()));
    }

    /** The job as this version gives it with the settings of the day. */
    static JobState day(SessionStore store, long session, ProbeKeys keys) throws StoreException {
        return new WhatIf(store, session, keys)
                .replay(store.header(session), SettleChoices.NONE, List.of(), Set.of())
                .job();
    }

    /** The same, and as it would be with what is set. */
    static List<JobState> jobs(
            SessionStore store, long session, SettleChoices choices, Optional<SettledBy> by, ProbeKeys keys)
            throws StoreException {
        Both both = new WhatIf(store, session, keys).both(choices, by);
        return List.of(both.before().job(), both.after().job());
    }

    private record Both(Replayed before, Replayed after) {}

    private Both both(SettleChoices choices, Optional<SettledBy> by) throws StoreException {
        SessionHeader day = store.header(session);
        Replayed before = replay(day, SettleChoices.NONE, List.of(), Set.of());
        SessionHeader other = other(day, choices, by);
        List<StageReading> taken = before.readings().stream()
                .filter(r -> !BY_THE_WAY.contains(r.purpose()))
                .toList();
        // First all may be late, which says what would have settled before the person went on.
        Replayed late = replay(other, choices, taken, places(taken).keySet());
        Set<Place> byThemselves = places(late.readings().stream()
                        .filter(r -> !r.handReason().equals(WENT_ON))
                        .toList())
                .keySet();
        return new Both(before, replay(other, choices, taken, byThemselves));
    }

    /** The header of the day with other settings, for a look at whether they can work. */
    public static SessionHeader other(SessionHeader day, SettleChoices choices, Optional<SettledBy> by) {
        SessionHeader header = day.withSettings(choices.over(day.settings()));
        return by.isPresent() ? header.withSettledBy(by.get()) : header;
    }

    /**
     * @param over what is set goes before what the person set in the course of the day
     * @param taken stage readings of the day, which are taken where they have not taken themselves
     * @param late those that are not taken before the next act, the others when the day read them
     */
    private Replayed replay(SessionHeader header, SettleChoices over, List<StageReading> taken, Set<Place> late)
            throws StoreException {
        LiveSession pipeline = new LiveSession(header, keys);
        List<StageReading> readings = new ArrayList<>();
        List<StageReading> due = taken.stream()
                .filter(r -> r.channels().stream().noneMatch(c -> late.contains(place(r, c))))
                .toList();
        long[] lastNanos = {0};
        store.events(session, event -> {
            if (event instanceof SessionEvent.Done) {
                force(event.timeNanos(), event.timeNanos() - 1, pipeline, taken, readings);
            }
            pipeline.take(withSettings(event, over));
            readings.addAll(pipeline.drain().readings());
            force(event.timeNanos(), event.timeNanos(), pipeline, due, readings);
            lastNanos[0] = Math.max(lastNanos[0], event.timeNanos());
        });
        force(lastNanos[0] + 1, lastNanos[0], pipeline, taken, readings);
        return new Replayed(pipeline, readings);
    }

    private static SessionEvent withSettings(SessionEvent event, SettleChoices over) {
        return event instanceof SessionEvent.Done done && done.act() instanceof Act.Settings said
                ? new SessionEvent.Done(
                        done.timeNanos(), new Act.Settings(over.over(said.from()), over.over(said.to())))
                : event;
    }

    /** Takes what the day had read until a time and this run has not. */
    private static void force(
            long nowNanos,
            long untilNanos,
            LiveSession pipeline,
            List<StageReading> taken,
            List<StageReading> readings) {
        for (StageReading day : taken) {
            boolean here = day.timeNanos() > untilNanos
                    || readings.stream()
                            .anyMatch(r ->
                                    r.step().equals(day.step()) && r.purpose().equals(day.purpose()));
            if (!here) {
                pipeline.take(new SessionEvent.Done(nowNanos, new Act.TakeNow(day.step(), WENT_ON)));
                readings.addAll(pipeline.drain().readings());
            }
        }
    }

    /** Of the first reading of that step and purpose: a step that is done again has another key. */
    private static Place place(StageReading reading, ChannelReading part) {
        return new Place(reading.step(), reading.purpose(), 1, part.role());
    }

    private static List<WhatIfReport.Line> readings(List<StageReading> before, List<StageReading> after) {
        Map<Place, WhatIfReport.Value> old = places(before);
        Map<Place, WhatIfReport.Value> now = places(after);
        Set<Place> all = new LinkedHashSet<>(old.keySet());
        all.addAll(now.keySet());
        return all.stream()
                .map(p -> new WhatIfReport.Line(
                        p.step(),
                        p.purpose(),
                        p.role(),
                        Optional.ofNullable(old.get(p)),
                        Optional.ofNullable(now.get(p))))
                .toList();
    }

    private static Map<Place, WhatIfReport.Value> places(List<StageReading> readings) {
        Map<Place, WhatIfReport.Value> places = new LinkedHashMap<>();
        Map<List<String>, Integer> counts = new HashMap<>();
        for (StageReading reading : readings) {
            int nth = counts.merge(List.of(reading.step(), reading.purpose()), 1, Integer::sum);
            for (ChannelReading part : reading.channels()) {
                places.put(
                        new Place(reading.step(), reading.purpose(), nth, part.role()),
                        new WhatIfReport.Value(
                                reading.timeNanos(),
                                part.value(),
                                part.expandedUncertainty(),
                                part.unit(),
                                part.settled(),
                                reading.byHand() && !reading.handReason().equals(WENT_ON),
                                part.reason()));
            }
        }
        return places;
    }

    /** Stretches of a log, each beside the first of the other run that it overlaps. */
    private static List<WhatIfReport.Line> stretches(Replayed before, Replayed after) {
        List<WhatIfReport.Line> lines = new ArrayList<>();
        for (ChannelRun channel : before.pipeline().channels()) {
            List<Stretch> left = new ArrayList<>(after.pipeline().channels().stream()
                    .filter(c -> c.role == channel.role)
                    .flatMap(c -> stretches(c).stream())
                    .toList());
            for (Stretch stretch : stretches(channel)) {
                Optional<Stretch> match =
                        left.stream().filter(stretch::overlaps).findFirst();
                match.ifPresent(left::remove);
                lines.add(line(channel.role, Optional.of(stretch), match));
            }
            left.forEach(stretch -> lines.add(line(channel.role, Optional.empty(), Optional.of(stretch))));
        }
        return lines;
    }

    private static WhatIfReport.Line line(Role role, Optional<Stretch> before, Optional<Stretch> after) {
        return new WhatIfReport.Line("", "settled", role, before.map(Stretch::value), after.map(Stretch::value));
    }

    private static List<Stretch> stretches(ChannelRun channel) {
        List<Stretch> stretches = new ArrayList<>();
        SettleEvent open = null;
        for (SettleEvent event : channel.changes()) {
            if (open != null) {
                stretches.add(stretch(channel, open, nanos(event)));
            }
            open = event.settled() ? event : null;
        }
        if (open != null) {
            stretches.add(stretch(channel, open, Long.MAX_VALUE));
        }
        return stretches;
    }

    private static Stretch stretch(ChannelRun channel, SettleEvent event, long toNanos) {
        WhatIfReport.Value value = new WhatIfReport.Value(
                nanos(event), event.value(), event.uncertainty(), channel.unit(), true, false, event.reason());
        return new Stretch(nanos(event), toNanos, value);
    }

    private static long nanos(SettleEvent event) {
        return Math.round(event.timeSeconds() * 1e9);
    }
}
