package settlemark.ui;

import java.awt.EventQueue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.session.OtherLimit;
import settlemark.session.ProbeKeys;
import settlemark.session.Rejudging;
import settlemark.session.WhatIf;
import settlemark.session.WhatIfReport;
import settlemark.settle.SettleChoices;

/**
 * What is tried on the open session: other settings of the settled rule, other limits, and what both make of its verdicts.
 * All of it goes with the word on its record, until another session is opened or it is left out. Lives on the event thread.
 */
final class ReviewTrial {
    private final ReviewHost host;
    private final Supplier<ReviewPane> pane;
    private final ReviewUnits units;
    private final Consumer<String> tell;
    private boolean asked;
    private SettleChoices choices = SettleChoices.NONE;
    private List<OtherLimit> limits = List.of();
    private WhatIf.@Nullable Tried settings;
    private int begun;

    /** @param tell hears what came of it */
    ReviewTrial(ReviewHost host, Supplier<ReviewPane> pane, ReviewUnits units, Consumer<String> tell) {
        this.host = host;
        this.pane = pane;
        this.units = units;
        this.tell = tell;
    }

    /** Another session is open. */
    void begin() {
        asked = false;
        leaveOut();
    }

    /** As it was on the day. */
    void leaveOut() {
        begun++;
        choices = SettleChoices.NONE;
        limits = List.of();
        settings = null;
    }

    /** Whether another rule is asked for. */
    boolean asked() {
        return asked;
    }

    void close() {
        asked = false;
    }

    /** What the other settings make of the readings, empty where none were tried. */
    Optional<WhatIfReport> report() {
        return Optional.ofNullable(settings).map(WhatIf.Tried::report);
    }

    /** What goes with the word. */
    Rejudging tried() {
        return new Rejudging(choices, Optional.empty(), limits);
    }

    /** Asks for another rule, or does not any longer. */
    void ask(StoredSession session) {
        if (unknown(session)) {
            return;
        }
        asked = !asked;
        if (asked) {
            if (settings == null) {
                say(Words.say("Type another limit or look ahead, then Enter."));
            }
            EventQueue.invokeLater(() -> pane.get().column().rule().focus());
        }
    }

    private boolean unknown(StoredSession session) {
        boolean unknown = session.job().isEmpty() && !session.header().plan().isEmpty();
        if (unknown) {
            tell.accept(Words.say("It has not been run through again yet"));
        }
        return unknown;
    }

    /**
     * Runs the session through again with other settings.
     *
     * @param step that is open when the answer has come
     */
    void rule(StoredSession session, SettleChoices other, Supplier<String> step) {
        int mine = ++begun;
        if (other.isNone()) {
            choices = other;
            settings = null;
            say(Words.say("As on the day. Type another limit or look ahead, then Enter."));
            return;
        }
        say(Words.say("Running the session through again three times"));
        host.study(
                session.workspace(),
                store -> WhatIf.tried(store, session.summary().number(), other, Optional.empty(), ProbeKeys.NONE),
                tried -> EventQueue.invokeLater(() -> {
                    if (mine == begun) {
                        settings = tried;
                        choices = other;
                        show(step.get());
                    }
                }),
                why -> EventQueue.invokeLater(() -> say(Words.told(why))));
    }

    private void say(String words) {
        pane.get().column().rule().say(words);
    }

    /** Says what the other settings change in a step, or in all where none is open. */
    void show(String step) {
        report().ifPresent(r -> say(RuleAsked.words(r, step, units)));
    }

    /** Asks for other limits, beginning at the open step. */
    void askLimits(StoredSession session, String step) {
        Optional<JobState> day = session.job();
        if (unknown(session)) {
            return;
        }
        LimitsTyped typed =
                day.map(d -> new LimitsTyped(d, job(d), units::of, limits)).orElse(null);
        if (typed == null || typed.rows().isEmpty()) {
            tell.accept(Words.say("Nothing was judged here, so there is no limit to change"));
            return;
        }
        pane.get().limits(typed, step, others -> {
            limits = others;
            pane.get().requestFocusInWindow();
            tell.accept(
                    others.isEmpty()
                            ? Words.say("The limits are those of the day")
                            : Words.say("{0}. V gives your word", changed(session)));
        });
    }

    private JobState job(JobState day) {
        return Optional.ofNullable(settings).flatMap(WhatIf.Tried::job).orElse(day);
    }

    private String changed(StoredSession session) {
        int changes = changes(session).size();
        return switch (changes) {
            case 0 -> Words.say("No verdict becomes another");
            case 1 -> Words.say("1 verdict becomes another");
            default -> Words.say("{0} verdicts become others", changes);
        };
    }

    private List<Rejudging.Change> changes(StoredSession session) {
        return session.job()
                .map(day -> Rejudging.changes(day, job(day), limits))
                .orElse(List.of());
    }

    /** What goes with the word, a sentence a line; empty where nothing was tried. */
    List<String> words(StoredSession session) {
        Rejudging tried = tried();
        if (tried.isNone()) {
            return List.of();
        }
        List<String> words = new ArrayList<>();
        words.add(Words.say("It is judged again under {0}", String.join(", ", tried.under())));
        words.add(changed(session) + ":");
        for (Rejudging.Change change : changes(session)) {
            String step = session.job()
                    .flatMap(j -> j.step(change.step()))
                    .map((StepState s) -> Words.told(s.step().title()))
                    .orElse(change.step());
            words.add(Words.say(
                    "{0}, {1}: {2} \u2192 {3}",
                    step, Words.told(change.figure()), LimitsPane.said(change.from()), LimitsPane.said(change.to())));
        }
        if (words.size() == 2) {
            words.set(1, Words.say("No verdict becomes another"));
        }
        return words;
    }
}
