package settlemark.ui;

import java.awt.EventQueue;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import settlemark.session.Note;

/** What a person keeps of a review: what is seen, as a file, and a note at the line. */
final class ReviewKeeping {
    private final Look look;
    private final ReviewHost host;
    private final Supplier<ReviewPane> pane;
    private final Runnable noted;
    private final Consumer<String> tell;

    /**
     * @param noted runs when a note is stored
     * @param tell hears what came of it
     */
    ReviewKeeping(Look look, ReviewHost host, Supplier<ReviewPane> pane, Runnable noted, Consumer<String> tell) {
        this.look = look;
        this.host = host;
        this.pane = pane;
        this.noted = noted;
        this.tell = tell;
    }

    /** Asks in which form what is seen is to be kept. */
    void view(@Nullable ReviewScene now) {
        if (now == null) {
            return;
        }
        List<PickList.Option> options = List.of(
                new PickList.Option(Words.say("Picture, PNG"), Words.say("as it is seen")),
                new PickList.Option(Words.say("Drawing, SVG"), Words.say("for print and for other programs")),
                new PickList.Option(Words.say("Table, CSV"), Words.say("the numbers of the traces that are shown")));
        pane.get()
                .ask(
                        Words.say("Keep what is seen as"),
                        options,
                        i -> host.keep(
                                ReviewPicture.of(now, look),
                                SeenView.Form.values()[i],
                                file -> EventQueue.invokeLater(() -> tell.accept(Words.say("kept: {0}", file))),
                                why -> EventQueue.invokeLater(() -> tell.accept(Words.told(why)))));
    }

    /** Asks for a note at a time of the session. */
    void note(StoredSession session, long atNanos) {
        String when = ReviewTimes.clock(session, atNanos, false);
        pane.get().inline().ask(() -> Words.say("Note at {0}", when), text -> {
            host.note(
                    session.workspace(),
                    session.summary().number(),
                    new Note(OptionalLong.of(atNanos), Instant.now(), text),
                    () -> EventQueue.invokeLater(noted),
                    why -> EventQueue.invokeLater(() -> tell.accept(Words.told(why))));
            pane.get().requestFocusInWindow();
        });
    }
}
