package settlemark.ui;

import java.awt.EventQueue;
import java.util.Optional;
import java.util.function.Consumer;
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

/** Turns snapshots into scenes, and sends each key of a job to what does it. Lives on the event thread. */
final class Controller {
    /** How many looks an answer to a futile key stays. */
    private static final int TOLD_LOOKS = 40;

    private final Look look;
    private final Desk desk;
    private final Optional<DemoSpeed> speed;
    private final DesktopHost host;
    private final Runnable close;
    private final Runnable restyle;
    private DeskPane pane;
    private final SoundBoard sounds;
    private @Nullable Scene scene;
    private final OpenStep step = new OpenStep();
    private @Nullable String askedKey;
    private final ShownUnits shown = new ShownUnits();
    private final DemoFollower demo;
    private final StepPresses presses;
    private final ActsAsked asked;
    private final RecordMaking record;
    private final Told told = new Told();
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
        this.speed = speed;
        this.host = host;
        this.close = close;
        this.restyle = restyle;
        this.sounds = new SoundBoard(host.tones());
        demo = new DemoFollower(hands);
        presses = new StepPresses(desk, demo);
        asked = new ActsAsked(desk, host, this::pane, this::tell, this::refresh);
        record = new RecordMaking(host, this::refresh);
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
        told.forget();
        digitsNow = true;
        shown.accept(pane);
        refresh();
        pane.inline().goOn(before.inline());
        pane.over().goOn(before.over(), demo.isDemo(), this::settings);
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
        return dirty || !told.isEmpty();
    }

    void show(Snapshot stored, boolean digits) {
        Snapshot snapshot = shown.of(stored);
        JobState job = snapshot.job()
                .orElseThrow(() -> new IllegalStateException("the window shows jobs; this session is a plain log"));
        StepState open = step.of(job);
        int times = speed.map(DemoSpeed::speed).orElse(1);
        scene = new Scene(snapshot, job, open, demo.state(), times, shown.axes(snapshot, job.plate()), record.state());
        demo.follow(scene);
        told.look();
        if (scene.job().alarm().isPresent() && pane.farShown()) {
            farView(false);
        }
        pane.show(scene, told.isEmpty() ? StepWords.standing(scene) : told.words(), digits || digitsNow);
        dirty = false;
        digitsNow = false;
        askName(scene);
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
        if (pane.farShown() && FarView.leftBy(deed)) {
            farView(false);
        }
        if (pane.over().takes(deed)) {
            refresh();
            return;
        }
        act(deed, now);
        refresh();
    }

    private void act(Deed deed, Scene now) {
        switch (deed) {
            case PRIMARY -> primary(now);
            case PRESSURES -> desk.act(new Act.TakePressures(now.open().key()));
            case ADJUST -> desk.act(new Act.Adjust(now.open().key()));
            case FAR_VIEW -> farView(!pane.farShown());
            case TAKE_NOW, NOTE, SKIP, HEAT, INSTRUMENT -> asked.ask(deed, now);
            case REPEAT -> repeat(now);
            case SEEN -> now.job().alarm().ifPresent(n -> desk.act(new Act.Seen(n.key())));
            case UNMARK -> desk.act(new Act.Unmark(now.open().key()));
            case DIAL -> presses.dial(now);
            case SETTINGS -> settings();
            case LEFT -> step.open(now.job(), now.index() - 1);
            case RIGHT -> step.open(now.job(), now.index() + 1);
            case FIRST -> step.open(now.job(), 0);
            case LAST -> step.open(now.job(), now.job().steps().size() - 1);
            case NOW -> backToNow();
            case ENTER -> enter(now);
            case TICK_1 -> presses.tick(now, 0);
            case TICK_2 -> presses.tick(now, 1);
            case TICK_3 -> presses.tick(now, 2);
            case SCREW_UP -> demo.turn(now.open(), DemoActs.SMALL_TURN);
            case SCREW_DOWN -> demo.turn(now.open(), -DemoActs.SMALL_TURN);
            case SCREW_UP_MORE -> demo.turn(now.open(), DemoActs.LARGE_TURN);
            case SCREW_DOWN_MORE -> demo.turn(now.open(), -DemoActs.LARGE_TURN);
            case SPEED -> speed.ifPresent(DemoSpeed::next);
            case SOUND -> {
                sounds.on(!sounds.on());
                tell(sounds.on() ? Words.say("Sound is on") : Words.say("Sound is off"));
            }
            case UNITS -> units(now);
            case THEME -> {
                look.dark(!look.dark());
                restyle.run();
            }
            case LANGUAGE -> {
                Words.speak(Words.next());
                restyle.run();
            }
            case KEYS -> pane.over().turnKeys(demo.isDemo());
            case VISITS -> pane.over().turnVisits();
            case CLOSE -> {
                close.run();
                host.close();
            }
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
        if (now.job().complete()) {
            record.begin();
        } else if (now.kind().typed() && !now.ticking()) {
            typed(now);
        } else {
            presses.press(now);
            if (now.kind() == StepKind.RECORD) {
                record.begin();
            }
        }
    }

    private void typed(Scene now) {
        if (pane.open().face(OpenColumn.FaceKind.TYPED) instanceof TypedFace face) {
            try {
                presses.typed(now, face);
                pane.requestFocusInWindow();
            } catch (IllegalArgumentException e) {
                tell(Words.told(String.valueOf(e.getMessage())));
            }
        }
    }

    private void repeat(Scene now) {
        if (ClockChoices.running(now)) {
            desk.act(new Act.DropRun(now.open().key(), "begun again"));
            return;
        }
        desk.act(new Act.Repeat(now.open().key()));
        step.present();
    }

    /** A folded column was picked. */
    void openColumn(String key) {
        step.open(key);
        refresh();
    }

    private void backToNow() {
        if (pane.inline().isVisible()) {
            leaveInline();
        } else if (pane.farShown()) {
            farView(false);
        } else {
            step.present();
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

    private void enter(Scene now) {
        if (ClockChoices.running(now)) {
            desk.act(new Act.EndRun(now.open().key()));
        } else if (now.live() && now.kind() == StepKind.RECORD) {
            focusName();
        }
    }

    private void settings() {
        Scene now = scene;
        if (now == null) {
            return;
        }
        SettleChoices before = SettingsTyped.inForce(now);
        pane.over().openSettings(new SettingsTyped(now.snapshot().header(), before), chosen -> {
            if (new SettingsChange(0, before, chosen, "").words().isEmpty()) {
                tell(Words.say("Nothing is changed"));
            } else {
                desk.act(new Act.Settings(before, chosen));
                tell(Words.say("Used from now on; the record says so"));
            }
        });
    }

    private void person(String name) {
        desk.act(new Act.Person(name));
        pane.requestFocusInWindow();
    }

    /** The next units that are not those of now; what is stored stays as it is. */
    private void units(Scene now) {
        SnapshotUnits next = shown.next(now.snapshot().header());
        units(next);
        tell(Words.say(
                "Shown in {0} and {1}; stored as before",
                next.pressure().symbol(), next.temperature().symbol()));
    }

    void units(SnapshotUnits units) {
        shown.choose(units);
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
        return before.heard(shown.chosen(), sounds.on());
    }

    /** Where the person stands now, and what they have typed and not said. */
    JobPlace place() {
        return new JobPlace(
                desk.snapshot().header().key(),
                step.elsewhere(),
                pane.farShown(),
                pane.over().open(),
                asked.asked(),
                TakenOver.texts(pane),
                speed.map(DemoSpeed::speed).orElse(1));
    }

    /** Stands where the person stood in this job before the program ended; the pane must be shown. */
    void stand(JobPlace place) {
        Scene now = scene;
        if (now == null || !place.session().equals(now.snapshot().header().key())) {
            return;
        }
        speed.filter(s -> s.choices().contains(place.speed())).ifPresent(s -> s.speed(place.speed()));
        if (now.job().step(place.step()).isPresent()) {
            step.open(place.step());
        }
        refresh();
        farView(place.far());
        pane.over().open(place.over(), demo.isDemo(), this::settings);
        if (scene != null) {
            asked.again(place.asked(), scene);
        }
        TakenOver.type(place.texts(), pane);
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

    private void tell(String words) {
        told.say(words, TOLD_LOOKS);
        refresh();
    }

    /** Shows the newest snapshot with what has just changed here. */
    private void refresh() {
        dirty = true;
        show(desk.snapshot(), false);
    }
}
