package settlemark.ui;

import java.awt.EventQueue;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import settlemark.settle.SettleChoices;

/**
 * A second person's word on a record that was sealed: accepted, or returned with the reason. Asked one thing after the
 * other; Esc leaves it at each.
 */
final class RecordVerdict {
    private final ReviewHost host;
    private final Supplier<ReviewPane> pane;
    private final SessionLibrary sessions;
    private final Consumer<String> tell;
    private SettleChoices tried = SettleChoices.NONE;

    /**
     * @param sessions lists what was said
     * @param tell hears what came of it
     */
    RecordVerdict(ReviewHost host, Supplier<ReviewPane> pane, SessionLibrary sessions, Consumer<String> tell) {
        this.sessions = sessions;
        this.host = host;
        this.pane = pane;
        this.tell = tell;
    }

    /** @param others settings of the rule that were tried on it, which are signed with the word */
    void ask(StoredSession session, SettleChoices others) {
        tried = others;
        pane.get()
                .ask(
                        Words.say("What is your word on the sealed record?"),
                        List.of(
                                new PickList.Option(
                                        Words.say("Accept it"),
                                        others.isNone()
                                                ? Words.say("signed with this workspace's key, beside the seal")
                                                : Words.say(
                                                        "signed, with what the other settings change that you tried")),
                                new PickList.Option(
                                        Words.say("Return it"),
                                        Words.say("with the reason; nothing that was sealed is changed"))),
                        i -> later(() -> who(session, i == 0)));
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
        ReviewHost.Word word = new ReviewHost.Word(accepted, person, reason, tried);
        host.judge(
                session.workspace(),
                session.summary().number(),
                word,
                () -> later(() -> {
                    sessions.said(session, word);
                    tell.accept(
                            accepted
                                    ? Words.say("Accepted by {0}, signed", person)
                                    : Words.say("Returned by {0}, signed", person));
                }),
                why -> later(() -> tell.accept(Words.told(why))));
    }
}
