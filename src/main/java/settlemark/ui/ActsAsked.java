package settlemark.ui;

import java.awt.EventQueue;
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
