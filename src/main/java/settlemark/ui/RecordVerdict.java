package settlemark.ui;

import java.awt.EventQueue;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * A second person's word on a record that was sealed: accepted, or returned with the reason. Asked one thing after the
 * other; Esc leaves it at each.
 */
final class RecordVerdict {
    private final ReviewHost host;
    private final Supplier<ReviewPane> pane;
    private final SessionLibrary sessions;
    private final Consumer<String> tell;
    private final ReviewTrial trial;

    /**
     * @param sessions lists what was said
     * @param trial what was tried on the session is signed with the word
     * @param tell hears what came of it
     */
    RecordVerdict(
            ReviewHost host,
            Supplier<ReviewPane> pane,
            SessionLibrary sessions,
            ReviewTrial trial,
            Consumer<String> tell) {
        this.sessions = sessions;
        this.host = host;
        this.pane = pane;
        this.trial = trial;
        this.tell = tell;
    }

    /** @param step that is open, empty where none is */
    void ask(StoredSession session, String step) {
        List<String> tried = trial.words(session);
        List<PickList.Option> options = new ArrayList<>();
        options.add(new PickList.Option(
                Words.say("Accept it"),
                tried.isEmpty()
                        ? Words.say("signed with this workspace's key, beside the seal")
                        : Words.say("signed, with what is said above")));
        options.add(new PickList.Option(
                Words.say("Return it"), Words.say("with the reason; nothing that was sealed is changed")));
        options.add(new PickList.Option(
                Words.say("Hold it against other limits first"), Words.say("L; they are signed with your word")));
        if (!tried.isEmpty()) {
            options.add(new PickList.Option(
                    Words.say("Leave out what was tried"), Words.say("the limits and the rule of the day alone")));
        }
        pane.get()
                .ask(
                        Words.say("What is your word on the sealed record?"),
                        options,
                        String.join("\n", tried),
                        i -> later(() -> chosen(session, step, i)));
    }

    private void chosen(StoredSession session, String step, int option) {
        switch (option) {
            case 0 -> who(session, true);
            case 1 -> who(session, false);
            case 2 -> trial.askLimits(session, step);
            default -> {
                trial.leaveOut();
                ask(session, step);
            }
        }
    }

    /** After the list has left. */
    private static void later(Runnable then) {
        EventQueue.invokeLater(then);
    }

    private void who(StoredSession session, boolean accepted) {
        pane.get().inline().ask(() -> Words.say("Your name"), person -> {
            if (accepted) {
                judge(session, true, person, "");
            } else {
                later(() -> pane.get()
                        .inline()
                        .ask(() -> Words.say("Why does it go back?"), reason -> judge(session, false, person, reason)));
            }
        });
    }

    private void judge(StoredSession session, boolean accepted, String person, String reason) {
        pane.get().requestFocusInWindow();
        tell.accept(Words.say("Holding the seal against the session"));
        ReviewHost.Word word = new ReviewHost.Word(accepted, person, reason, trial.tried());
        host.judge(
                session.workspace(),
                session.summary().number(),
                word,
                said -> later(() -> {
                    sessions.said(session, said);
                    tell.accept(
                            accepted
                                    ? Words.say("Accepted by {0}, signed", person)
                                    : Words.say("Returned by {0}, signed", person));
                }),
                why -> later(() -> tell.accept(Words.told(why))));
    }
}
