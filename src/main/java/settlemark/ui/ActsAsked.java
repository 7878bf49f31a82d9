package settlemark.ui;

import java.awt.EventQueue;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import settlemark.job.Act;
import settlemark.session.Desk;

/** Asks in the window's line for the words that an act needs, and reports the act with them. */
final class ActsAsked {
    private final Desk desk;
    private final DesktopHost host;
    private final Supplier<DeskPane> pane;
    private final Consumer<String> tell;
    private final Runnable refresh;
    private String asked = "";

    /**
     * @param pane the one that is shown now
     * @param tell an answer for the person, in their language
     * @param refresh shows what an act has changed
     */
    ActsAsked(Desk desk, DesktopHost host, Supplier<DeskPane> pane, Consumer<String> tell, Runnable refresh) {
        this.desk = desk;
        this.host = host;
        this.pane = pane;
        this.tell = tell;
        this.refresh = refresh;
    }

    /** Asks for what this act at the open step needs. */
    void ask(Deed deed, Scene now) {
        asked = deed.name();
        String key = now.open().key();
        switch (deed) {
            case TAKE_NOW ->
                ask(() -> Words.say("Why is it taken before it has settled?"), t -> new Act.TakeNow(key, t));
            case NOTE ->
                ask(
                        () -> Words.say(
                                "Note on \"{0}\"", Words.told(now.open().step().title())),
                        t -> new Act.Note(key, t));
            case SKIP -> ask(() -> Words.say("Why is this step skipped?"), t -> new Act.Skip(key, t));
            case HEAT ->
                ask(
                        () -> Words.say(
                                "Heating value as delivered, Btu/ft\u00b3, and who says so, such as: 1032 gas supplier, March"),
                        t -> new Act.Heat(TypedHeat.of(t)));
            case INSTRUMENT -> instrument(now);
            default -> throw new IllegalArgumentException(deed + " needs no words");
        }
    }

    /** Name of the deed whose words are asked for now, empty where none is. */
    String asked() {
        return pane.get().inline().isVisible() ? asked : "";
    }

    /** Asks again for what was asked for before the program ended. */
    void again(String deed, Scene now) {
        for (Deed one : List.of(Deed.TAKE_NOW, Deed.NOTE, Deed.SKIP, Deed.HEAT, Deed.INSTRUMENT)) {
            if (one.name().equals(deed) && Choices.why(one, now).isEmpty()) {
                ask(one, now);
            }
        }
    }

    private void ask(Supplier<String> question, Function<String, Act> act) {
        pane.get().inline().ask(question, text -> {
            pane.get().requestFocusInWindow();
            try {
                desk.act(act.apply(text));
                refresh.run();
            } catch (IllegalArgumentException e) {
                tell.accept(Words.told(String.valueOf(e.getMessage())));
            }
        });
    }

    private void instrument(Scene now) {
        pane.get().inline().ask(() -> InstrumentEntry.question(now.snapshot().header()), text -> {
            InstrumentEntry.typed(text, now.snapshot().header(), host, desk, this::told);
            pane.get().requestFocusInWindow();
        });
    }

    /** From another thread. */
    private void told(String words) {
        EventQueue.invokeLater(() -> tell.accept(Words.told(words)));
    }
}
