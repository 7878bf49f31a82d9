package settlemark.ui;

import java.awt.EventQueue;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import settlemark.session.SnapshotUnits;
import settlemark.settle.SettleChoices;
import settlemark.settle.StageReading;

/** Turns stored sessions into scenes, and hands what the person does on to what does it. Lives on the event thread. */
final class ReviewController implements ReviewPane.Heard {
    private static final int TOLD_LOOKS = 60;
    /** Parts of what is shown that the line goes by. */
    private static final double A_LITTLE = 0.01;

    private static final double MORE = 0.1;

    /** From here on every button has room for its hint. */
    private static final double WIDE = 1480;

    private final Look look;
    private final Runnable back;
    private final Runnable close;
    private final Runnable restyle;
    private ReviewPane pane;
    private final SessionLibrary library;
    private final ReviewData data;
    private final ReviewLaying laying;
    private final ReviewTime time;
    private final ReviewJumps jumps;
    private final ReviewTrial trial;
    private final ReviewKeeping keeping;
    private final RecordVerdict verdict;
    private final ReviewUnits units = new ReviewUnits();
    private String step = "";
    private boolean playWhenOpen;
    private Predicate<SessionLine> awaited = line -> false;
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
        this.back = back;
        this.close = close;
        this.restyle = restyle;
        pane = new ReviewPane(look, this);
        library = new SessionLibrary(host, this::listed);
        data = new ReviewData(host, () -> pane.column().columns(), this::show, why -> tell(Words.told(why)));
        laying = new ReviewLaying(host, data, library, () -> pane, this::tell);
        time = new ReviewTime(data);
        jumps = new ReviewJumps(time, this::step, this::tell);
        trial = new ReviewTrial(host, () -> pane, units, this::tell);
        keeping = new ReviewKeeping(look, host, () -> pane, data::reload, this::tell);
        verdict = new RecordVerdict(host, () -> pane, library, trial, this::tell);
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
        if (time.playing()) {
            time.play(passed);
            show();
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

    private void listed() {
        Optional<SessionLine> wanted = library.all().stream().filter(awaited).findFirst();
        if (wanted.isPresent()) {
            awaited = line -> false;
            choose(wanted.get());
            playWhenOpen = true;
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
        time.playing(false);
        playWhenOpen = false;
        trial.begin();
        tell(Words.say("Opening"));
        data.open(
                line,
                () -> {
                    told = "";
                    data.session().ifPresent(s -> time.begin(s.whole()));
                    time.playing(playWhenOpen);
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
        time.pace(newPace);
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
                    time.lineNanos(),
                    time.playing(),
                    time.pace(),
                    units.traces(data.traces()),
                    units.whole(data.whole()),
                    units.laid(data.laid()),
                    s.axes(),
                    trial.asked(),
                    trial.report());
            pane.show(scene);
        });
        pane.buttons()
                .show(
                        ReviewChoices.primary(
                                session.isPresent(),
                                time.playing(),
                                time.pace(),
                                pane.getWidth() < look.px(WIDE) && !pane.narrow()),
                        List.of(),
                        ReviewChoices.others(session.isPresent(), data.isLaid(), trial.asked(), pane.narrow()));
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
        } else if (pane.limits().isVisible() && !besideLimits(deed)) {
            tell(Words.say("Enter keeps the limits, Esc leaves them as they were"));
        } else if (!pane.pick().isVisible()) {
            told = "";
            act(deed);
            show();
        }
    }

    /** What can be done while limits are typed: what they are seen in, and the word, for which they are kept first. */
    private static boolean besideLimits(Deed deed) {
        return switch (deed) {
            case THEME, JUDGE -> true;
            default -> false;
        };
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
        switch (deed) {
            case PRIMARY, PLAY -> time.playOrStop();
            case PACE -> time.nextPace();
            case BACK_A_LITTLE -> time.by(-A_LITTLE);
            case ON_A_LITTLE -> time.by(A_LITTLE);
            case BACK -> time.by(-MORE);
            case ON -> time.by(MORE);
            case FIRST -> time.first();
            case LAST -> time.last();
            case ZOOM_IN -> time.zoom(-1);
            case ZOOM_OUT -> time.zoom(1);
            case ZOOM_ALL -> {
                step = "";
                time.all();
            }
            case LEFT -> jumps.neighbour(session, step, -1);
            case RIGHT -> jumps.neighbour(session, step, 1);
            case READING_NEXT -> jumps.reading(session, true);
            case READING_BEFORE -> jumps.reading(session, false);
            case GAP_NEXT -> jumps.gap(session);
            case NOTE_NEXT -> jumps.note(session);
            case LAY_OVER -> laying.ask(session, step, this::show);
            case WHAT_IF -> trial.ask(session);
            case LIMITS -> trial.askLimits(session, step);
            case EXPORT_VIEW -> keeping.view(scene);
            case VISITS -> {
                pane.keys(false, ReviewChoices.keys());
                pane.visits(!pane.visits().isVisible());
            }
            case JUDGE -> judge(session);
            case UNITS -> units(session);
            case NOTE -> keeping.note(session, time.lineNanos());
            default -> {
                // Keys of another place.
            }
        }
    }

    private void judge(StoredSession session) {
        if (!pane.limits().isVisible() || pane.limits().keep()) {
            verdict.ask(session, step);
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
        } else if (pane.limits().isVisible()) {
            pane.limits().leave();
        } else if (pane.keysShown() || pane.visits().isVisible()) {
            pane.keys(false, ReviewChoices.keys());
            pane.visits(false);
        } else if (data.part() < 1) {
            data.stop();
            library.rest(false);
            tell(Words.say("Not run through again: no steps and verdicts"));
        } else if (!pane.isFocusOwner() && data.session().isPresent()) {
            pane.putListAway();
            pane.requestFocusInWindow();
        } else if (trial.asked()) {
            trial.close();
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
        if (data.session().isPresent()) {
            time.line(timeNanos);
            show();
        }
    }

    @Override
    public void zoom(int steps, long aroundNanos) {
        time.zoom(steps, aroundNanos);
        show();
    }

    @Override
    public void step(String key) {
        data.session().ifPresent(s -> {
            step = key;
            s.span(key).ifPresent(span -> {
                long now = time.lineNanos();
                boolean inside = now >= span.fromNanos() && now <= span.toNanos();
                time.step(span, s.reading(key).map(StageReading::timeNanos).orElse(inside ? now : span.fromNanos()));
            });
            laying.opened(s, key);
            told = s.span(key).isEmpty() ? Words.say("This step never began") : "";
            pane.requestFocusInWindow();
            trial.show(step);
            show();
        });
    }

    @Override
    public void rule(SettleChoices choices) {
        data.session().ifPresent(s -> trial.rule(s, choices, () -> step));
    }

    /** The next units that are not those of now; what is stored stays as it is. */
    private void units(StoredSession session) {
        SnapshotUnits next = units.next(session);
        trial.show(step);
        tell(Words.say(
                "Shown in {0} and {1}; stored as before",
                next.pressure().symbol(), next.temperature().symbol()));
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
        trial.show(step);
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
