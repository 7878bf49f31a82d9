package settlemark.ui;

import java.awt.EventQueue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import settlemark.job.Act;
import settlemark.job.JobState;
import settlemark.job.SettingsChange;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.DemoHands;
import settlemark.session.Desk;
import settlemark.session.Snapshot;
import settlemark.session.SnapshotUnits;
import settlemark.settle.SettleChoices;

/**
 * Turns snapshots into scenes, and what the person does into acts. Lives on the event thread. Longer than most: every key of
 * a job ends here, and all of them change the same few things.
 */
final class Controller {
    /** How many looks an answer to a futile key stays. */
    private static final int TOLD_LOOKS = 40;

    private final Look look;
    private final Desk desk;
    private final Optional<DemoHands> hands;
    private final Optional<DemoSpeed> speed;
    private final DesktopHost host;
    private final Runnable close;
    private final Runnable restyle;
    private DeskPane pane;
    private final SoundBoard sounds;
    private @Nullable Scene scene;
    private @Nullable Axes axes;
    private @Nullable String openKey;
    private @Nullable String nowKey;
    private @Nullable String adjustedKey;
    private @Nullable String clockedKey;
    private @Nullable String askedKey;
    private @Nullable SnapshotUnits shown;
    private RecordState record = RecordState.NONE;
    private String told = "";
    private int toldLooks;
    private boolean dirty;
    private boolean digitsNow;

    Controller(
            Look look,
            Desk desk,
            Optional<DemoHands> hands,
            Optional<DemoSpeed> speed,
            DesktopHost host,
            Runnable close,
            Runnable restyle) {
        this.look = look;
        this.desk = desk;
        this.hands = hands;
        this.speed = speed;
        this.host = host;
        this.close = close;
        this.restyle = restyle;
        this.sounds = new SoundBoard(host.tones());
        this.pane = made();
    }

    private DeskPane made() {
        DeskPane newPane = new DeskPane(look, this::perform, this::openColumn, this::person);
        if (newPane.open().face(OpenColumn.FaceKind.RECORD) instanceof RecordFace face) {
            face.form().of(host);
        }
        return newPane;
    }

    /**
     * Makes all that shows words anew; what is open, typed and on stays.
     *
     * @param shown puts the new pane into the window
     */
    void speakAnew(Consumer<DeskPane> shown) {
        DeskPane before = pane;
        TakenOver kept = new TakenOver(before);
        pane = made();
        pane.farView(before.farShown());
        pane.keys(before.keysShown(), hands.isPresent());
        pane.visits(before.visits().isVisible());
        toldLooks = 0;
        digitsNow = true;
        shown.accept(pane);
        refresh();
        pane.inline().goOn(before.inline());
        if (before.settings().isVisible() && scene != null) {
            settings(scene);
            pane.settings().goOn(before.settings());
        }
        kept.into(pane);
    }

    Look look() {
        return look;
    }

    DeskPane pane() {
        return pane;
    }

    @Nullable
    Scene scene() {
        return scene;
    }

    /** True where something that is not in the snapshot has changed. */
    boolean dirty() {
        return dirty || toldLooks > 0;
    }

    void show(Snapshot stored, boolean digits) {
        Snapshot snapshot = shown == null ? stored : shown.of(stored);
        JobState job = snapshot.job()
                .orElseThrow(() -> new IllegalStateException("the window shows jobs; this session is a plain log"));
        Axes before = axes != null
                ? axes
                : Axes.of(
                        job.plate(),
                        snapshot.header().pressureUnit(),
                        snapshot.header().temperatureUnit());
        axes = before.with(snapshot);
        follow(job);
        StepState open = job.step(openKey == null ? "" : openKey).orElse(last(job));
        int times = speed.map(DemoSpeed::speed).orElse(1);
        scene = new Scene(snapshot, job, open, hands.map(DemoHands::state), times, axes, record);
        demoFollows(scene);
        toldLooks = Math.max(0, toldLooks - 1);
        if (scene.job().alarm().isPresent() && pane.farShown()) {
            farView(false);
        }
        pane.show(scene, toldLooks > 0 ? told : StepWords.standing(scene), digits || digitsNow);
        dirty = false;
        digitsNow = false;
        askName(scene);
    }

    /** Whoever looks at the present stays with it when the next column opens. */
    private void follow(JobState job) {
        String now = job.currentStep().orElse(last(job)).key();
        if (openKey == null || openKey.equals(nowKey)) {
            openKey = now;
        }
        nowKey = now;
    }

    private static StepState last(JobState job) {
        return job.steps().get(job.steps().size() - 1);
    }

    /** The demo's hands take the cap off and call for the stage as soon as a stage is to be adjusted. */
    private void demoFollows(Scene now) {
        String clocking =
                now.live() && now.kind() == StepKind.CLOCK ? now.open().key() : null;
        if (clocking != null && !clocking.equals(clockedKey)) {
            hands.ifPresent(h -> DemoActs.pressed(h, now.open()));
        }
        clockedKey = now.live() ? clocking : clockedKey;
        String adjusting = now.adjusting() ? now.open().key() : null;
        if (adjusting != null && !adjusting.equals(adjustedKey)) {
            hands.ifPresent(h -> DemoActs.adjusting(h, now.open()));
        }
        if (now.live()) {
            adjustedKey = adjusting;
        }
    }

    /** The name is asked for once, when the record's column becomes the present. */
    private void askName(Scene now) {
        String key = now.live() && now.kind() == StepKind.RECORD ? now.open().key() : null;
        if (key != null && !key.equals(askedKey) && now.job().person().isBlank()) {
            focusName();
        }
        askedKey = key;
    }

    private void focusName() {
        if (pane.open().face(OpenColumn.FaceKind.RECORD) instanceof RecordFace face) {
            EventQueue.invokeLater(() -> face.name().requestFocusInWindow());
        }
    }

    /** Does what a key or a button asks for, or tells why not. */
    void perform(Deed deed) {
        Scene now = scene;
        if (now == null) {
            return;
        }
        String why = Choices.why(deed, now);
        if (!why.isEmpty()) {
            tell(why);
            return;
        }
        if (pane.farShown() && leavesFarView(deed)) {
            farView(false);
        }
        if (uncovers(deed)) {
            refresh();
            return;
        }
        act(deed, now);
        refresh();
    }

    /** What lies over the strip goes with the next key; returns whether that was all that was asked for. */
    private boolean uncovers(Deed deed) {
        boolean set = pane.settings().isVisible() && deed != Deed.THEME && deed != Deed.LANGUAGE;
        if (set) {
            pane.leaveSettings();
        }
        boolean covered = set || pane.keysShown() || pane.visits().isVisible();
        if (deed != Deed.KEYS) {
            pane.keys(false, hands.isPresent());
        }
        if (deed != Deed.VISITS) {
            pane.visits(false);
        }
        return covered && deed == Deed.NOW || set && deed == Deed.SETTINGS;
    }

    private static boolean leavesFarView(Deed deed) {
        return switch (deed) {
            case NOTE, SKIP, TAKE_NOW, SETTINGS, KEYS, VISITS -> true;
            default -> false;
        };
    }

    private void act(Deed deed, Scene now) {
        switch (deed) {
            case PRIMARY -> primary(now);
            case TAKE_NOW ->
                ask(
                        () -> Words.say("Why is it taken before it has settled?"),
                        t -> new Act.TakeNow(now.open().key(), t));
            case PRESSURES -> desk.act(new Act.TakePressures(now.open().key()));
            case ADJUST -> desk.act(new Act.Adjust(now.open().key()));
            case FAR_VIEW -> farView(!pane.farShown());
            case NOTE ->
                ask(
                        () -> Words.say(
                                "Note on \"{0}\"", Words.told(now.open().step().title())),
                        t -> new Act.Note(now.open().key(), t));
            case SKIP ->
                ask(
                        () -> Words.say("Why is this step skipped?"),
                        t -> new Act.Skip(now.open().key(), t));
            case REPEAT -> repeat(now);
            case SEEN -> now.job().alarm().ifPresent(n -> desk.act(new Act.Seen(n.key())));
            case UNMARK -> desk.act(new Act.Unmark(now.open().key()));
            case DIAL -> dial(now);
            case HEAT ->
                ask(
                        () -> Words.say(
                                "Heating value as delivered, Btu/ft\u00b3, and who says so, such as: 1032 gas supplier, March"),
                        t -> new Act.Heat(TypedHeat.of(t)));
            case SETTINGS -> settings(now);
            case INSTRUMENT ->
                pane.inline().ask(() -> InstrumentEntry.question(now.snapshot().header()), text -> {
                    InstrumentEntry.typed(text, now.snapshot().header(), host, desk, this::told);
                    pane.requestFocusInWindow();
                });
            case LEFT -> neighbour(now, now.index() - 1);
            case RIGHT -> neighbour(now, now.index() + 1);
            case FIRST -> neighbour(now, 0);
            case LAST -> neighbour(now, now.job().steps().size() - 1);
            case NOW -> backToNow();
            case ENTER -> enter(now);
            case TICK_1 -> tick(now, 0);
            case TICK_2 -> tick(now, 1);
            case TICK_3 -> tick(now, 2);
            case SCREW_UP -> turn(now, DemoActs.SMALL_TURN);
            case SCREW_DOWN -> turn(now, -DemoActs.SMALL_TURN);
            case SCREW_UP_MORE -> turn(now, DemoActs.LARGE_TURN);
            case SCREW_DOWN_MORE -> turn(now, -DemoActs.LARGE_TURN);
            case SPEED -> speed.ifPresent(Controller::faster);
            case SOUND -> {
                sounds.on(!sounds.on());
                tell(sounds.on() ? Words.say("Sound is on") : Words.say("Sound is off"));
            }
            case UNITS -> units(now);
            case THEME -> theme();
            case LANGUAGE -> {
                Words.speak(Words.next());
                restyle.run();
            }
            case KEYS -> pane.keys(!pane.keysShown(), hands.isPresent());
            case VISITS -> pane.visits(!pane.visits().isVisible());
            case CLOSE -> leave();
            default -> {
                // Keys of another place.
            }
        }
    }

    private void primary(Scene now) {
        Choice choice = Choices.primary(now);
        if (!choice.available()) {
            tell(choice.why());
        } else if (choice.deed() == Deed.NOW) {
            backToNow();
        } else if (choice.deed() == Deed.CLOSE) {
            tell(Words.say("The record is written: {0} closes the window", Deed.CLOSE.label()));
        } else {
            press(now);
        }
    }

    private void press(Scene now) {
        StepState open = now.open();
        if (now.job().complete()) {
            makeRecord();
        } else if (now.adjusting()) {
            hands.ifPresent(h -> DemoActs.pressed(h, open));
            desk.act(new Act.CapOn(open.key()));
        } else if (now.ticking()) {
            tick(now, nextTick(open));
        } else if (now.kind() == StepKind.CLOCK) {
            desk.act(new Act.PointerAtMark(open.key()));
        } else if (now.kind().typed()) {
            typed(now, open);
        } else {
            hands.ifPresent(h -> DemoActs.pressed(h, open));
            desk.act(new Act.Confirm(open.key()));
            if (now.kind() == StepKind.RECORD) {
                makeRecord();
            }
        }
    }

    /** With the demo's hands, what their analyser shows is typed where the person typed nothing. */
    private void typed(Scene now, StepState open) {
        if (!(pane.open().face(OpenColumn.FaceKind.TYPED) instanceof TypedFace face)) {
            return;
        }
        try {
            hands.ifPresent(h -> DemoActs.pressed(h, open));
            List<Act> acts = new ArrayList<>(face.typed(now));
            if (acts.isEmpty() && open.typed().isEmpty()) {
                hands.flatMap(DemoHands::analysis)
                        .ifPresent(
                                a -> acts.addAll(a.acts(open.key(), open.step().required())));
            }
            acts.forEach(desk::act);
            desk.act(new Act.Confirm(open.key()));
            pane.requestFocusInWindow();
        } catch (IllegalArgumentException e) {
            tell(Words.told(String.valueOf(e.getMessage())));
        }
    }

    private static int nextTick(StepState open) {
        List<String> items = open.step().ticks();
        for (int i = 0; i < items.size(); i++) {
            if (!open.ticked().containsKey(items.get(i))) {
                return i;
            }
        }
        return items.size();
    }

    private void tick(Scene now, int number) {
        List<String> items = now.open().step().ticks();
        if (number < items.size()) {
            String item = items.get(number);
            boolean done = now.open().ticked().containsKey(item);
            desk.act(new Act.Tick(now.open().key(), item, !done));
        }
    }

    private void makeRecord() {
        record = RecordState.MAKING;
        host.makeRecord(
                files -> EventQueue.invokeLater(() -> recordIs(RecordState.written(files))),
                why -> EventQueue.invokeLater(() -> recordIs(RecordState.failed(why))));
    }

    private void recordIs(RecordState state) {
        record = state;
        refresh();
    }

    private void repeat(Scene now) {
        if (ClockChoices.running(now)) {
            desk.act(new Act.DropRun(now.open().key(), "begun again"));
            return;
        }
        desk.act(new Act.Repeat(now.open().key()));
        openKey = nowKey;
    }

    private void neighbour(Scene now, int index) {
        int bounded = Math.max(0, Math.min(now.job().steps().size() - 1, index));
        openKey = now.job().steps().get(bounded).key();
    }

    /** A folded column was picked. */
    void openColumn(String key) {
        openKey = key;
        refresh();
    }

    private void backToNow() {
        if (pane.inline().isVisible()) {
            leaveInline();
        } else if (pane.farShown()) {
            farView(false);
        } else {
            openKey = nowKey;
        }
        pane.requestFocusInWindow();
    }

    private void farView(boolean shown) {
        pane.farView(shown);
        digitsNow = true;
    }

    private void leaveInline() {
        pane.inline().leave();
        pane.requestFocusInWindow();
    }

    private void dial(Scene now) {
        double next = ClockChoices.next(now.open().clocking().dialCubicFeet());
        desk.act(new Act.MeterDial(now.open().key(), next));
    }

    private void enter(Scene now) {
        if (ClockChoices.running(now)) {
            desk.act(new Act.EndRun(now.open().key()));
        } else if (now.live() && now.kind() == StepKind.RECORD) {
            focusName();
        }
    }

    private void settings(Scene now) {
        SettleChoices before = SettingsTyped.inForce(now);
        pane.settings(new SettingsTyped(now.snapshot().header(), before), chosen -> {
            pane.leaveSettings();
            if (new SettingsChange(0, before, chosen, "").words().isEmpty()) {
                tell(Words.say("Nothing is changed"));
            } else {
                desk.act(new Act.Settings(before, chosen));
                tell(Words.say("Used from now on; the record says so"));
            }
        });
    }

    private interface Typed {
        Act act(String text);
    }

    private void ask(Supplier<String> question, Typed typed) {
        pane.inline().ask(question, text -> {
            try {
                desk.act(typed.act(text));
            } catch (IllegalArgumentException e) {
                tell(Words.told(String.valueOf(e.getMessage())));
            }
            pane.requestFocusInWindow();
            refresh();
        });
    }

    /** From another thread. */
    private void told(String words) {
        EventQueue.invokeLater(() -> {
            tell(Words.told(words));
            refresh();
        });
    }

    private void person(String name) {
        desk.act(new Act.Person(name));
        pane.requestFocusInWindow();
    }

    private void turn(Scene now, double turns) {
        hands.ifPresent(h -> DemoActs.turn(h, now.open(), turns));
    }

    private static void faster(DemoSpeed speed) {
        List<Integer> choices = speed.choices();
        int at = choices.indexOf(speed.speed());
        speed.speed(choices.get((at + 1) % choices.size()));
    }

    private void theme() {
        look.dark(!look.dark());
        restyle.run();
    }

    /** The next units that are not those of now; what is stored stays as it is. */
    private void units(Scene now) {
        SnapshotUnits before = new SnapshotUnits(
                now.snapshot().header().pressureUnit(), now.snapshot().header().temperatureUnit());
        int next = (Units.SHOWN.indexOf(before) + 1) % Units.SHOWN.size();
        units(Units.SHOWN.get(next));
        tell(Words.say(
                "Shown in {0} and {1}; stored as before",
                Units.SHOWN.get(next).pressure().symbol(),
                Units.SHOWN.get(next).temperature().symbol()));
    }

    void units(SnapshotUnits units) {
        shown = units;
        axes = null;
        digitsNow = true;
    }

    /** Puts back what was on. */
    void restore(ScreenState state) {
        sounds.on(state.sound());
        if (state.units() >= 0) {
            units(Units.SHOWN.get(state.units()));
        }
    }

    ScreenState kept(ScreenState before) {
        return before.heard(shown == null ? -1 : Units.SHOWN.indexOf(shown), sounds.on());
    }

    /** Sounds that this look makes. */
    void hear(long nowNanos) {
        Scene now = scene;
        if (now != null) {
            sounds.look(now, nowNanos);
        }
    }

    SoundBoard sounds() {
        return sounds;
    }

    private void leave() {
        close.run();
        host.close();
    }

    private void tell(String words) {
        told = words;
        toldLooks = TOLD_LOOKS;
        refresh();
    }

    /** Shows the newest snapshot with what has just changed here. */
    private void refresh() {
        dirty = true;
        show(desk.snapshot(), false);
    }
}
