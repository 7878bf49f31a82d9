package settlemark.ui;

import java.awt.EventQueue;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import settlemark.job.JobState;
import settlemark.session.Note;
import settlemark.session.ProbeKeys;
import settlemark.session.SnapshotUnits;
import settlemark.session.Span;
import settlemark.session.WhatIf;
import settlemark.session.WhatIfReport;
import settlemark.settle.SettleChoices;
import settlemark.settle.StageReading;

/**
 * Turns stored sessions into scenes, and what the person does into stretches of time. Lives on the event thread. Longer than
 * most: every key of the review ends here, and nearly all of them move the same line over the same stretch.
 */
final class ReviewController implements ReviewPane.Heard {
    static final List<Integer> PACES = List.of(1, 2, 5, 10, 20, 50, 100);
    private static final long LEAST_NANOS = 50_000_000L;
    private static final int TOLD_LOOKS = 60;
    /** From here on every button has room for its hint. */
    private static final double WIDE = 1480;

    /** Where the line stands in the stretch after it has run out of it. */
    private static final double LEAD = 0.1;

    private final Look look;
    private final ReviewHost host;
    private final Runnable back;
    private final Runnable close;
    private final Runnable restyle;
    private ReviewPane pane;
    private final SessionLibrary library;
    private final ReviewData data;
    private final ReviewLaying laying;
    private final RecordVerdict verdict;
    private final ReviewUnits units = new ReviewUnits();
    private String step = "";
    private long lineNanos;
    private boolean playing;
    private int pace = 10;
    private boolean asked;
    private Predicate<SessionLine> awaited = line -> false;
    private @Nullable WhatIfReport rule;
    private SettleChoices tried = SettleChoices.NONE;
    private long triedOn = -1;
    private String told = "";
    private int toldLooks;
    private long lastLookNanos;
    private @Nullable ReviewScene scene;

    /**
     * @param back goes back to where the review was opened from
     * @param close closes the window
     */
    ReviewController(Look look, ReviewHost host, Runnable back, Runnable close, Runnable restyle) {
        this.look = look;
        this.host = host;
        this.back = back;
        this.close = close;
        this.restyle = restyle;
        pane = new ReviewPane(look, this);
        library = new SessionLibrary(host, this::listed);
        data = new ReviewData(host, () -> pane.column().columns(), this::show, why -> tell(Words.told(why)));
        laying = new ReviewLaying(host, data, library, () -> pane, this::tell);
        verdict = new RecordVerdict(host, () -> pane, library, this::tell);
        library.load();
        show();
    }

    ReviewPane pane() {
        return pane;
    }

    @Nullable
    ReviewScene scene() {
        return scene;
    }

    SessionLibrary library() {
        return library;
    }

    /** Ten times a second. */
    void tick(long nowNanos) {
        long passed = lastLookNanos == 0 ? 0 : nowNanos - lastLookNanos;
        lastLookNanos = nowNanos;
        if (playing) {
            play(passed);
        }
        boolean news = data.part() < 1;
        if (toldLooks > 0 && --toldLooks == 0) {
            told = "";
            news = true;
        }
        if (news) {
            title();
        }
    }

    private void play(long passedNanos) {
        Optional<StoredSession> session = data.session();
        if (session.isEmpty()) {
            return;
        }
        long end = session.get().whole().toNanos();
        long next = Math.min(end, lineNanos + passedNanos * pace);
        playing = next < end;
        lineNanos = next;
        Span view = data.view();
        long length = view.toNanos() - view.fromNanos();
        if (next > view.toNanos() || next < view.fromNanos()) {
            move(next - Math.round(LEAD * length), length);
        }
        show();
    }

    private void listed() {
        Optional<SessionLine> wanted = library.all().stream().filter(awaited).findFirst();
        if (wanted.isPresent()) {
            awaited = line -> false;
            choose(wanted.get());
            playing = true;
        }
        List<SessionLine> fitting = library.fitting();
        pane.sessions().show(fitting, library.words());
        data.session().ifPresent(s -> {
            for (int i = 0; i < fitting.size(); i++) {
                if (fitting.get(i).is(s) && !pane.sessions().lines().isFocusOwner()) {
                    pane.sessions().select(i);
                }
            }
        });
    }

    @Override
    public void find(String text) {
        library.find(text, LocalDate.now(ZoneId.systemDefault()));
    }

    @Override
    public void choose(SessionLine line) {
        library.rest(true);
        step = "";
        lineNanos = 0;
        playing = false;
        asked = false;
        rule = null;
        triedOn = -1;
        tell(Words.say("Opening"));
        data.open(
                line,
                () -> {
                    told = "";
                    show();
                    pane.requestFocusInWindow();
                },
                session -> {
                    session.job().ifPresent(j -> library.knows(line, SessionLine.Steps.of(j)));
                    library.rest(false);
                });
    }

    /** Opens a session as soon as the list is there, and plays it. */
    void openAtOnce(Path workspace, long session, int newPace) {
        pace = newPace;
        awaited = line -> line.workspace().equals(workspace) && line.summary().number() == session;
        listed();
    }

    private void show() {
        title();
        Optional<StoredSession> session = data.session();
        session.ifPresent(stored -> {
            StoredSession s = units.session(stored);
            scene = new ReviewScene(
                    s,
                    step,
                    data.view(),
                    lineNanos,
                    playing,
                    pace,
                    units.traces(data.traces()),
                    units.whole(data.whole()),
                    units.laid(data.laid()),
                    axes(s),
                    asked,
                    Optional.ofNullable(rule));
            pane.show(scene);
        });
        pane.buttons()
                .show(
                        ReviewChoices.primary(
                                session.isPresent(), playing, pace, pane.getWidth() < look.px(WIDE) && !pane.narrow()),
                        List.of(),
                        ReviewChoices.others(session.isPresent(), data.isLaid(), asked, pane.narrow()));
    }

    private static Optional<Axes> axes(StoredSession session) {
        return session.replayed()
                .flatMap(r -> r.job()
                        .map((JobState j) -> Axes.of(
                                        j.plate(),
                                        r.header().pressureUnit(),
                                        r.header().temperatureUnit())
                                .with(r)
                                .with(session.readings())));
    }

    private void title() {
        String what = data.session()
                .map(s -> Words.say("Review: {0}", s.header().title()) + ", "
                        + ReviewTimes.clock(s, 0, true).replaceFirst(" [0-9:]+$", ""))
                .orElse(Words.say("Review"));
        boolean simulated = data.session().map(s -> s.summary().simulated()).orElse(false);
        double part = data.part();
        String going = part < 1 ? Words.say("Running it through again: {0} %, Esc stops", Math.round(100 * part)) : "";
        pane.say(simulated, what, told.isEmpty() ? going : told);
    }

    @Override
    public void perform(Deed deed) {
        if (deed == Deed.NOW) {
            leave();
        } else if (deed == Deed.CLOSE) {
            close.run();
        } else if (deed == Deed.LANGUAGE) {
            pane.pick().leave();
            Words.speak(Words.next());
            restyle.run();
        } else if (!pane.pick().isVisible()) {
            told = "";
            act(deed);
            show();
        }
    }

    private void act(Deed deed) {
        switch (deed) {
            case KEYS -> {
                pane.visits(false);
                pane.keys(!pane.keysShown(), ReviewChoices.keys());
            }
            case THEME -> {
                look.dark(!look.dark());
                restyle.run();
            }
            case FIND -> find();
            default ->
                data.session()
                        .ifPresentOrElse(
                                s -> act(deed, s), () -> tell(Words.say("Choose a session first: / finds one")));
        }
    }

    private void act(Deed deed, StoredSession session) {
        Span view = data.view();
        long length = view.toNanos() - view.fromNanos();
        switch (deed) {
            case PRIMARY, PLAY ->
                playing = !playing && lineNanos < session.whole().toNanos();
            case PACE -> pace = PACES.get((PACES.indexOf(pace) + 1) % PACES.size());
            case BACK_A_LITTLE -> line(lineNanos - length / 100);
            case ON_A_LITTLE -> line(lineNanos + length / 100);
            case BACK -> line(lineNanos - length / 10);
            case ON -> line(lineNanos + length / 10);
            case FIRST -> line(0);
            case LAST -> line(session.whole().toNanos());
            case ZOOM_IN -> zoom(-1, lineNanos);
            case ZOOM_OUT -> zoom(1, lineNanos);
            case ZOOM_ALL -> {
                step = "";
                data.view(session.whole());
            }
            case LEFT -> neighbour(session, -1);
            case RIGHT -> neighbour(session, 1);
            case READING_NEXT -> reading(session, true);
            case READING_BEFORE -> reading(session, false);
            case GAP_NEXT -> gap(session);
            case NOTE_NEXT -> note(session);
            case LAY_OVER -> laying.ask(session, step, this::show);
            case WHAT_IF -> ask(session);
            case EXPORT_VIEW -> keep();
            case VISITS -> {
                pane.keys(false, ReviewChoices.keys());
                pane.visits(!pane.visits().isVisible());
            }
            case JUDGE -> verdict.ask(session, session.summary().number() == triedOn ? tried : SettleChoices.NONE);
            case UNITS -> units(session);
            case NOTE -> write(session);
            default -> {
                // Keys of another place.
            }
        }
    }

    private void find() {
        pane.list(true);
        // Later, or the slash would be the first letter in the field.
        EventQueue.invokeLater(() -> pane.sessions().field().requestFocusInWindow());
    }

    private void leave() {
        if (pane.inline().isVisible()) {
            pane.inline().leave();
        } else if (pane.pick().isVisible()) {
            pane.pick().leave();
        } else if (pane.keysShown() || pane.visits().isVisible()) {
            pane.keys(false, ReviewChoices.keys());
            pane.visits(false);
        } else if (data.part() < 1) {
            data.stop();
            library.rest(false);
            tell(Words.say("Not run through again: no steps and verdicts"));
        } else if (!pane.isFocusOwner() && data.session().isPresent()) {
            pane.requestFocusInWindow();
        } else if (asked) {
            asked = false;
        } else if (!step.isEmpty()) {
            step = "";
            data.session().ifPresent(s -> data.view(s.whole()));
        } else {
            library.rest(true);
            back.run();
            return;
        }
        pane.requestFocusInWindow();
        show();
    }

    @Override
    public void line(long timeNanos) {
        data.session().ifPresent(s -> {
            lineNanos = Math.max(0, Math.min(s.whole().toNanos(), timeNanos));
            Span view = data.view();
            long length = view.toNanos() - view.fromNanos();
            if (lineNanos < view.fromNanos() || lineNanos > view.toNanos()) {
                move(lineNanos - length / 2, length);
            }
            show();
        });
    }

    /** Shows a stretch of this length within the session. */
    private void move(long fromNanos, long lengthNanos) {
        data.session().ifPresent(s -> {
            long whole = s.whole().toNanos();
            long length = Math.min(whole, Math.max(LEAST_NANOS, lengthNanos));
            long from = Math.max(0, Math.min(whole - length, fromNanos));
            data.view(new Span(from, from + length));
        });
    }

    @Override
    public void zoom(int steps, long aroundNanos) {
        Span view = data.view();
        double factor = Math.pow(2, Math.max(-3, Math.min(3, steps)));
        double length = (view.toNanos() - view.fromNanos()) * factor;
        double before = (aroundNanos - view.fromNanos()) * factor;
        move(aroundNanos - Math.round(before), Math.round(length));
        show();
    }

    @Override
    public void step(String key) {
        data.session().ifPresent(s -> {
            step = key;
            s.span(key).ifPresent(span -> {
                data.view(span);
                boolean inside = lineNanos >= span.fromNanos() && lineNanos <= span.toNanos();
                lineNanos = s.reading(key).map(StageReading::timeNanos).orElse(inside ? lineNanos : span.fromNanos());
            });
            laying.opened(s, key);
            told = s.span(key).isEmpty() ? Words.say("This step never began") : "";
            pane.requestFocusInWindow();
            showRule();
            show();
        });
    }

    private void neighbour(StoredSession session, int by) {
        List<String> keys = session.job()
                .map(j -> j.steps().stream().map(s -> s.key()).toList())
                .orElse(List.of());
        if (keys.isEmpty()) {
            line(lineNanos + by * (data.view().toNanos() - data.view().fromNanos()) / 10);
            return;
        }
        int at = step.isEmpty() ? (by > 0 ? -1 : keys.size()) : keys.indexOf(step);
        int next = at + by;
        if (next >= 0 && next < keys.size()) {
            step(keys.get(next));
        }
    }

    private void reading(StoredSession session, boolean on) {
        Optional<StageReading> found = session.readings().stream()
                .filter(r -> on ? r.timeNanos() > lineNanos : r.timeNanos() < lineNanos)
                .reduce((a, b) -> on ? a : b);
        if (found.isEmpty()) {
            tell(on ? Words.say("No reading comes after the line") : Words.say("No reading comes before the line"));
            return;
        }
        if (session.span(found.get().step()).isPresent()) {
            step(found.get().step());
        }
        line(found.get().timeNanos());
    }

    private void gap(StoredSession session) {
        Optional<Span> next =
                session.gaps().stream().filter(g -> g.fromNanos() > lineNanos).findFirst();
        if (next.isEmpty()) {
            tell(session.gaps().isEmpty() ? Words.say("There is no gap") : Words.say("No gap comes after the line"));
            return;
        }
        long length = next.get().toNanos() - next.get().fromNanos();
        lineNanos = next.get().fromNanos();
        move(lineNanos - 2 * length, 5 * length);
        tell(Words.say("gap of {0}", ReviewTimes.length(length)));
    }

    private void note(StoredSession session) {
        Optional<StoredSession.Moment> next = session.moments().stream()
                .filter(m -> m.timeNanos() > lineNanos)
                .findFirst();
        if (next.isEmpty()) {
            tell(Words.say("No note comes after the line"));
            return;
        }
        line(next.get().timeNanos());
        tell(next.get().words());
    }

    private void ask(StoredSession session) {
        if (session.job().isEmpty() && !session.header().plan().isEmpty()) {
            tell(Words.say("It has not been run through again yet"));
            return;
        }
        asked = !asked;
        if (asked) {
            pane.column().rule().say(Words.say("Type another limit or look ahead, then Enter."));
            EventQueue.invokeLater(() -> pane.column().rule().focus());
        }
    }

    @Override
    public void rule(SettleChoices choices) {
        data.session().ifPresent(s -> {
            pane.column().rule().say(Words.say("Running the session through again three times"));
            host.study(
                    s.workspace(),
                    store -> WhatIf.run(store, s.summary().number(), choices, Optional.empty(), ProbeKeys.NONE),
                    report -> EventQueue.invokeLater(() -> {
                        rule = report;
                        tried = choices;
                        triedOn = s.summary().number();
                        showRule();
                    }),
                    why -> EventQueue.invokeLater(() -> pane.column().rule().say(Words.told(why))));
        });
    }

    private void showRule() {
        WhatIfReport known = rule;
        if (known != null) {
            pane.column().rule().say(RuleAsked.words(known, step, units));
        }
    }

    /** The next units that are not those of now; what is stored stays as it is. */
    private void units(StoredSession session) {
        SnapshotUnits next = units.next(session);
        showRule();
        tell(Words.say(
                "Shown in {0} and {1}; stored as before",
                next.pressure().symbol(), next.temperature().symbol()));
    }

    private void keep() {
        ReviewScene now = scene;
        if (now == null) {
            return;
        }
        List<PickList.Option> options = List.of(
                new PickList.Option(Words.say("Picture, PNG"), Words.say("as it is seen")),
                new PickList.Option(Words.say("Drawing, SVG"), Words.say("for print and for other programs")),
                new PickList.Option(Words.say("Table, CSV"), Words.say("the numbers of the traces that are shown")));
        pane.ask(
                Words.say("Keep what is seen as"),
                options,
                i -> host.keep(
                        ReviewPicture.of(now, look),
                        SeenView.Form.values()[i],
                        file -> EventQueue.invokeLater(() -> tell(Words.say("kept: {0}", file))),
                        why -> EventQueue.invokeLater(() -> tell(Words.told(why)))));
    }

    private void write(StoredSession session) {
        String when = ReviewTimes.clock(session, lineNanos, false);
        pane.inline().ask(() -> Words.say("Note at {0}", when), text -> {
            host.note(
                    session.workspace(),
                    session.summary().number(),
                    new Note(OptionalLong.of(lineNanos), Instant.now(), text),
                    () -> EventQueue.invokeLater(data::reload),
                    why -> EventQueue.invokeLater(() -> tell(Words.told(why))));
            pane.requestFocusInWindow();
        });
    }

    /**
     * Makes all that shows words anew; the session, the stretch and what was typed stay.
     *
     * @param shown puts the new pane into the window
     */
    void speakAnew(Consumer<ReviewPane> shown) {
        ReviewPane before = pane;
        TakenOver kept = new TakenOver(before);
        pane = new ReviewPane(look, this);
        told = "";
        pane.goOn(before, ReviewChoices.keys());
        listed();
        shown.accept(pane);
        show();
        showRule();
        pane.inline().goOn(before.inline());
        kept.into(pane);
    }

    void restyled() {
        pane.restyle();
        listed();
        show();
    }

    private void tell(String words) {
        told = words;
        toldLooks = TOLD_LOOKS;
        show();
    }
}
