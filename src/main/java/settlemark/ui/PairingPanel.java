package settlemark.ui;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Graphics;
import java.awt.event.ActionEvent;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import javax.accessibility.AccessibleRole;
import javax.swing.AbstractAction;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import org.jspecify.annotations.Nullable;
import settlemark.session.PairingPerson;

/**
 * What a pairing asks, within the face. Whatever is no clear yes is a no: neither Space nor Enter says yes, and a broken
 * off pairing or a closed window is a no. The questions come from another thread, which waits for the answer.
 */
final class PairingPanel extends JPanel implements PairingPerson {
    private final transient Look look;
    private final Question words;
    private final JTextField field = new JTextField();
    private final WordButton yes;
    private final WordButton no;
    private transient @Nullable CompletableFuture<String> waiting;
    private transient Runnable left = () -> {};

    private static final String YES = "yes";

    /** Below this height an answer and its key share a line. */
    private static final double LOW = 64;

    PairingPanel(Look look) {
        super(null);
        this.look = look;
        words = new Question(look);
        yes = new Answer(look, Words.say("Yes"), "Y", this::agree);
        no = new Answer(look, Words.say("No"), Words.say("Esc"), () -> answer(""));
        field.putClientProperty("labeledBy", words);
        add(words);
        add(field);
        add(yes);
        add(no);
        field.addActionListener(e -> answer(field.getText().strip()));
        bind("Y", this::agree);
        bind("ESCAPE", () -> answer(""));
        bind("N", () -> answer(""));
        setFocusable(true);
        setVisible(false);
        restyle();
    }

    private void bind(String key, Runnable action) {
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke(key), key);
        getActionMap().put(key, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent event) {
                action.run();
            }
        });
    }

    void restyle() {
        field.setFont(look.regular(Look.STEP));
        InlineRow.style(field, look);
    }

    /** @param newLeft runs when nothing is asked any more */
    void whenLeft(Runnable newLeft) {
        left = newLeft;
    }

    @Override
    public boolean confirm(String probe, int number) {
        return ask(Words.say("Does {0} show this number?", probe), String.format(Locale.ROOT, "%06d", number), false)
                .equals(YES);
    }

    @Override
    public boolean allow(String probe) {
        return ask(
                        Words.say(
                                "{0} has neither keys nor display, so nobody can check that it is the one that you mean. Pair with it?",
                                probe),
                        "",
                        false)
                .equals(YES);
    }

    @Override
    public OptionalInt passkey(String probe) {
        String typed = ask(
                Words.say("Type the number that {0} shows or that is printed on it, six digits at most", probe),
                "",
                true);
        return typed.matches("[0-9]{1,6}") ? OptionalInt.of(Integer.parseInt(typed)) : OptionalInt.empty();
    }

    @Override
    public void show(String probe, int number) {
        EventQueue.invokeLater(() -> open(
                Words.say("Enter this number on {0}", probe), String.format(Locale.ROOT, "%06d", number), false, null));
    }

    @Override
    public void brokenOff() {
        EventQueue.invokeLater(() -> answer(""));
    }

    private String ask(String question, String number, boolean typed) {
        CompletableFuture<String> answer = new CompletableFuture<>();
        EventQueue.invokeLater(() -> open(question, number, typed, answer));
        return answer.join();
    }

    /** Shows a question; {@code typed} where a number is to be typed. On the event thread. */
    void open(String question, String number, boolean typed, @Nullable CompletableFuture<String> answer) {
        answer("");
        waiting = answer;
        words.say(question, number);
        field.setText("");
        field.getAccessibleContext().setAccessibleName(question);
        getAccessibleContext().setAccessibleName(question + " " + number);
        field.setVisible(typed);
        yes.setVisible(answer != null && !typed);
        setVisible(true);
        revalidate();
        if (typed) {
            field.requestFocusInWindow();
        } else {
            requestFocusInWindow();
        }
    }

    private void agree() {
        if (yes.isVisible()) {
            answer(YES);
        }
    }

    /** The end of whatever is asked; empty for no. */
    void answer(String said) {
        CompletableFuture<String> asked = waiting;
        waiting = null;
        if (isVisible()) {
            setVisible(false);
            left.run();
        }
        if (asked != null) {
            asked.complete(said);
        }
    }

    @Override
    public void doLayout() {
        int margin = look.ipx(40);
        int high = look.buttonPx() + 2 * WordButton.ringPx();
        int wide = Math.max(look.ipx(180), high);
        int y = getHeight() / 2;
        words.setBounds(margin, look.ipx(16), getWidth() - 2 * margin, Math.max(1, y - look.ipx(24)));
        if (field.isVisible()) {
            field.setBounds(margin, y, look.ipx(260), look.ipx(60));
            no.setBounds(margin + look.ipx(280), y - look.ipx(8), wide, high);
        } else {
            no.setBounds(margin, y, wide, high);
            yes.setBounds(margin + wide + look.ipx(8), y, wide, high);
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** The question and, large, the number. */
    private static final class Question extends Painted {
        private String question = "";
        private String number = "";

        Question(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        void say(String newQuestion, String newNumber) {
            question = newQuestion;
            number = newNumber;
            sentence(question + " " + number);
            repaint();
        }

        @Override
        void draw(Pen pen) {
            double y = pen.paragraph(
                    question, look.semiBold(Look.LABEL), pen.theme().ink(), 0, look.px(32), getWidth());
            pen.text(number, look.semiBold(Look.RAISE), pen.theme().ink(), 0, y + look.px(56));
        }
    }

    /** One of the two answers. */
    private static final class Answer extends WordButton {
        private final String title;
        private final String key;

        Answer(Look look, String title, String key, Runnable pressed) {
            super(look, pressed);
            this.title = title;
            this.key = key;
            getAccessibleContext().setAccessibleName(Words.say("{0}, key {1}", title, key));
            setFocusable(false);
        }

        @Override
        public Dimension getPreferredSize() {
            return new Dimension(look.ipx(180), look.buttonPx());
        }

        @Override
        void words(Pen pen, Color ink, Color second) {
            if (getHeight() - 2 * WordButton.ringPx() < look.px(LOW)) {
                pen.fitCentred(
                        title + "  " + key,
                        look.semiBold(Look.NAME),
                        ink,
                        getWidth() / 2.0,
                        getHeight() / 2.0 + look.px(6),
                        getWidth() - look.px(20));
                return;
            }
            pen.fitCentred(
                    title,
                    look.semiBold(Look.LABEL),
                    ink,
                    getWidth() / 2.0,
                    getHeight() / 2.0 - look.px(1),
                    getWidth() - look.px(20));
            pen.textCentred(key, look.regular(Look.BODY), second, getWidth() / 2.0, getHeight() / 2.0 + look.px(22));
        }
    }
}
