package settlemark.ui;

import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Graphics;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** One question with one line to type, above the buttons: a note, or a reason. Enter ends it, Esc leaves it. */
final class InlineRow extends JPanel {
    private static final String RINGED = "settlemark.ringed";

    private final transient Look look;
    private final JLabel label = new FittedLabel();
    private final JLabel keys = new FittedLabel(Words.say("Enter to keep it, Esc to leave it"));
    private final JTextField field = new JTextField();
    private transient Supplier<String> question = () -> "";
    private transient Consumer<String> then = text -> {};

    InlineRow(Look look) {
        super(new MigLayout(
                "insets 4 16 4 16, fill", "[shrink 200][grow,fill,shrink 50,120:pref][shrink 200]", "[fill]"));
        this.look = look;
        label.setLabelFor(field);
        add(label, "wmin 40");
        add(field);
        add(keys, "wmin 40");
        field.addActionListener(e -> done());
        setVisible(false);
        restyle();
    }

    /** Fonts and colours after a change of theme. */
    void restyle() {
        label.setFont(look.semiBold(Look.NAME));
        keys.setFont(look.regular(Look.BODY));
        field.setFont(look.regular(Look.NAME));
        label.setForeground(look.theme().ink());
        keys.setForeground(look.theme().ink2());
        style(field, look);
    }

    static void style(JTextField field, Look look) {
        field.setForeground(look.theme().ink());
        field.setCaretColor(look.theme().ink());
        field.setBackground(look.theme().sheet());
        field.setBorder(new FieldBorder(look));
        if (field.getClientProperty(RINGED) == null) {
            field.putClientProperty(RINGED, true);
            field.addFocusListener(new FocusAdapter() {
                @Override
                public void focusGained(FocusEvent event) {
                    field.repaint();
                }

                @Override
                public void focusLost(FocusEvent event) {
                    field.repaint();
                }
            });
        }
    }

    /** Lies above what begins at a height, where something is asked; returns where what is above both ends. */
    int above(int bottom, int width) {
        if (!isVisible()) {
            return bottom;
        }
        int high = getPreferredSize().height;
        setBounds(0, bottom - high, width, high);
        return bottom - high;
    }

    /** @param newQuestion says it in the language of the moment */
    void ask(Supplier<String> newQuestion, Consumer<String> newThen) {
        question = newQuestion;
        then = newThen;
        label.setText(question.get());
        field.getAccessibleContext().setAccessibleName(question.get());
        field.setText("");
        setVisible(true);
        revalidate();
        // Later, or the letter of the key that asked would be the first in the field.
        EventQueue.invokeLater(field::requestFocusInWindow);
    }

    /** Asks what another row was asking. */
    void goOn(InlineRow before) {
        if (before.isVisible()) {
            ask(before.question, before.then);
        }
    }

    void leave() {
        setVisible(false);
    }

    JTextField field() {
        return field;
    }

    private void done() {
        String text = field.getText().strip();
        if (!text.isEmpty()) {
            setVisible(false);
            then.accept(text);
        }
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(look.ipx(600), look.ipx(56));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().window());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
