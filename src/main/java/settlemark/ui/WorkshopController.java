package settlemark.ui;

import java.awt.EventQueue;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import settlemark.document.Problem;
import settlemark.document.Severity;
import settlemark.measure.Chunk;
import settlemark.measure.Unit;
import settlemark.profile.Profile;

/** Turns picked bytes into fields of a profile. Lives on the event thread and never waits. */
final class WorkshopController {
    private static final String TEXT = "text";
    private static final String TYPED = "typed.";

    private final WorkshopHost host;
    private final Look look;
    private final Runnable back;
    private final Runnable close;
    private final Runnable restyle;
    private WorkshopPane pane;
    private final Drafting drafting = new Drafting();
    private FrameStack.Picked picked = new FrameStack.Picked(-1, -1);
    private List<Problem> problems = List.of();
    private Optional<Profile> profile = Optional.empty();
    private boolean listening;
    private String told = "";
    /** The text that was saved last. */
    private @Nullable String saved;

    WorkshopController(Look look, WorkshopHost host, Runnable back, Runnable close, Runnable restyle) {
        this.look = look;
        this.host = host;
        this.back = back;
        this.close = close;
        this.restyle = restyle;
        pane = made();
        pane.kind.setText("int");
        pane.scale.setText("1");
        pane.unit.setText("Pa");
        show();
    }

    private WorkshopPane made() {
        return new WorkshopPane(look, this::perform, this::pick, this::edited, this::add);
    }

    WorkshopPane pane() {
        return pane;
    }

    /** What a restart puts back: the frames, the fields, and what is typed; empty where all of it is saved. */
    Map<String, String> kept() {
        String text = pane.text().text();
        if (text.equals(saved)) {
            return Map.of();
        }
        Map<String, String> kept = new LinkedHashMap<>(drafting.kept());
        if (!text.isEmpty()) {
            kept.put(TEXT, text);
        }
        if (!kept.isEmpty()) {
            pane.fields().forEach((key, field) -> kept.put(TYPED + key, field.getText()));
        }
        return kept;
    }

    /** Puts back what {@link #kept} gave; what cannot be read is as at first. */
    void putBack(Map<String, String> kept) {
        if (kept.isEmpty()) {
            return;
        }
        try {
            drafting.putBack(kept);
        } catch (IllegalArgumentException e) {
            told = Words.say("What was begun here before cannot be read");
            show();
            return;
        }
        refill();
        String text = kept.getOrDefault(TEXT, "");
        if (!text.isEmpty()) {
            pane.text().fill(text);
            check(text);
        }
        pane.fields().forEach((key, field) -> field.setText(kept.getOrDefault(TYPED + key, field.getText())));
        told = Words.say("As it was left; Undo begins here");
        show();
    }

    WorkshopDraft draft() {
        return drafting.draft();
    }

    private void pick(FrameStack.Picked newPicked) {
        picked = newPicked;
        draft().fields().stream()
                .filter(f -> f.from() == newPicked.from())
                .findFirst()
                .ifPresent(f -> {
                    pane.name.setText(f.name());
                    pane.kind.setText(f.kind() + (f.bigEndian() ? "" : " le"));
                    pane.scale.setText(Numbers.plain(f.scale()).replace(Numbers.MINUS, "-"));
                    pane.unit.setText(f.unit());
                });
        told = "";
        show();
    }

    /** Typed by hand: its problems stand at their lines, its values above the bytes. */
    private void edited(String text) {
        check(text);
        EventQueue.invokeLater(this::show);
    }

    private void check(String text) {
        var reading = WorkshopDraft.read(text);
        problems = reading.problems();
        profile = reading.profile();
    }

    void perform(Deed deed) {
        told = "";
        switch (deed) {
            case NOW -> leave();
            case CLOSE -> {
                host.stop();
                close.run();
            }
            case KEYS -> keys(!pane.keysShown());
            case LANGUAGE -> {
                Words.speak(Words.next());
                restyle.run();
            }
            case THEME -> {
                look.dark(!look.dark());
                restyle.run();
            }
            case OPEN_FILE -> ask(() -> Words.say("Capture, or file of hexadecimal frames"), this::open);
            case LISTEN -> listen();
            case START_BYTES -> start();
            case ADD_FIELD -> add();
            case REMOVE_FIELD -> change(draft().without(Math.max(0, picked.from())));
            case TAKE_BACK -> takeBack();
            case NAME_DEVICE -> ask(() -> Words.say("Key of the device, such as my-gauge"), this::name);
            case PRIMARY, SAVE -> save();
            default -> {
                // Keys of another place.
            }
        }
        show();
    }

    private void keys(boolean wanted) {
        pane.keys(wanted, KeyList.of(Deed.Place.WORKSHOP));
    }

    private void leave() {
        if (pane.inline().isVisible()) {
            pane.inline().leave();
        } else if (pane.keysShown()) {
            keys(false);
        } else if (!pane.isFocusOwner()) {
            pane.requestFocusInWindow();
        } else {
            host.stop();
            back.run();
        }
        pane.requestFocusInWindow();
    }

    private void ask(Supplier<String> question, Consumer<String> then) {
        pane.inline().ask(question, text -> {
            then.accept(text);
            pane.requestFocusInWindow();
            show();
        });
    }

    private void open(String file) {
        host.frames(
                Path.of(file),
                found -> EventQueue.invokeLater(() -> frames(found)),
                why -> EventQueue.invokeLater(() -> tell(Words.told(why))));
    }

    /** Shows other frames than before. */
    void frames(List<Chunk> found) {
        drafting.replace(found);
        refill();
        tell(Words.say("{0} frames", drafting.frames().size()));
    }

    private void listen() {
        if (listening) {
            host.stop();
            listening = false;
            return;
        }
        ask(() -> Words.say("Serial port to listen to, such as /dev/ttyUSB0"), port -> {
            listening = true;
            drafting.forgetBytes();
            host.listen(
                    port.strip(),
                    WorkshopDraft.line(),
                    chunk -> EventQueue.invokeLater(() -> heard(chunk)),
                    why -> EventQueue.invokeLater(() -> {
                        listening = false;
                        tell(Words.told(why));
                    }));
        });
    }

    private void heard(Chunk chunk) {
        if (listening) {
            drafting.follow(chunk);
            refill();
            show();
        }
    }

    /** The picked bytes begin each frame. */
    private void start() {
        if (picked.from() != 0 || !drafting.start(picked.to())) {
            told = Words.say("Pick the first bytes of the frames: those are the start");
            return;
        }
        refill();
    }

    private void add() {
        try {
            if (picked.from() < 0) {
                told = Words.say("Pick bytes first: press on the first and drag to the last");
                return;
            }
            change(draft().with(FieldTyped.of(pane, picked)));
        } catch (IllegalArgumentException e) {
            told = Words.told(String.valueOf(e.getMessage()));
        } finally {
            show();
        }
    }

    private void change(WorkshopDraft changed) {
        drafting.change(changed);
        refill();
    }

    private void takeBack() {
        if (drafting.takeBack()) {
            refill();
        } else {
            told = Words.say("There is nothing to take back");
        }
    }

    private void name(String id) {
        if (id.matches("[a-z][a-z0-9-]{0,60}")) {
            WorkshopDraft now = draft();
            change(new WorkshopDraft(
                    id,
                    Numbers.capital(id.replace('-', ' ')),
                    now.startBytes(),
                    now.lengthBytes(),
                    now.check(),
                    now.fields()));
        } else {
            tell(Words.say("A key has lower-case letters, digits and hyphens, got \"{0}\"", id));
        }
    }

    /** The text follows what is picked; an edit by hand stands until the next pick. */
    private void refill() {
        String text = drafting.text();
        if (!text.isEmpty()) {
            pane.text().fill(text);
            check(text);
        }
    }

    private String missing() {
        if (drafting.frames().isEmpty()) {
            return Words.say("no frames yet");
        }
        if (draft().fields().isEmpty()) {
            return Words.say("pick bytes and give them a name");
        }
        return problems.stream()
                .filter(p -> p.severity() == Severity.ERROR)
                .findFirst()
                .map(p -> Words.say("line {0} has a problem", p.line()))
                .orElse("");
    }

    private void save() {
        String missing = missing();
        if (!missing.isEmpty()) {
            told = missing;
            return;
        }
        String id = profile.map(Profile::id).orElse(draft().id());
        String text = pane.text().text();
        host.save(
                id,
                text,
                file -> EventQueue.invokeLater(() -> {
                    saved = text;
                    tell(Words.say("saved: {0}", file));
                }),
                why -> EventQueue.invokeLater(() -> tell(Words.told(why))));
    }

    private void tell(String words) {
        told = words;
        show();
    }

    private void show() {
        pane.stack().show(drafting.frames(), draft(), said(), picked);
        pane.text().problems(draft().fields().isEmpty() && pane.text().text().isEmpty() ? List.of() : problems);
        pane.say(Words.say("Pick bytes to make a field; it is decoded as you pick"), told);
        String missing = missing();
        Choice primary = missing.isEmpty()
                ? Choice.of(Deed.SAVE, Words.say("Save profile"), Words.say("with a captured frame as its example"))
                : Choice.no(Deed.SAVE, Words.say("Save profile"), missing);
        pane.buttons()
                .show(
                        primary,
                        List.of(),
                        List.of(
                                Choice.of(Deed.NOW, Words.say("Back")),
                                Choice.of(Deed.OPEN_FILE, Words.say("From a file")),
                                Choice.of(Deed.LISTEN, listening ? Words.say("Stop frames") : Words.say("Listen")),
                                Choice.of(Deed.START_BYTES, Words.say("Start")),
                                Choice.of(Deed.ADD_FIELD, Words.say("Make field")),
                                Choice.of(Deed.TAKE_BACK, Words.say("Undo"))));
    }

    /** What each field says in the newest frame. */
    private Map<String, String> said() {
        Map<String, String> said = new LinkedHashMap<>();
        List<byte[]> frames = drafting.frames();
        Map<String, Double> values = profile.isPresent() && !frames.isEmpty()
                ? WorkshopDraft.values(profile.get(), frames.get(frames.size() - 1))
                : Map.of();
        for (WorkshopDraft.Picked field : draft().fields()) {
            Double value = values.get(field.name());
            String unit = Unit.find(field.unit()).map(Unit::symbol).orElse("");
            said.put(field.name(), value == null ? Words.say("no value") : Numbers.plain(value) + " " + unit);
        }
        return said;
    }

    /**
     * Makes all that shows words anew; frames, fields and what was typed stay.
     *
     * @param shown puts the new pane into the window
     */
    void speakAnew(Consumer<WorkshopPane> shown) {
        WorkshopPane before = pane;
        TakenOver kept = new TakenOver(before);
        pane = made();
        pane.text().fill(before.text().text());
        keys(before.keysShown());
        told = "";
        show();
        shown.accept(pane);
        pane.inline().goOn(before.inline());
        kept.into(pane);
    }

    void restyled() {
        pane.restyle();
        show();
    }
}
