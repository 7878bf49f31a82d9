package settlemark.ui;

import java.awt.BorderLayout;
import java.awt.Font;
import java.awt.Graphics;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.text.BadLocationException;
import javax.swing.text.DefaultHighlighter;
import settlemark.document.Problem;
import settlemark.document.Severity;

/** The text of a profile in the making; what is wrong stands below it and is marked at its line. */
final class DraftText extends JPanel {
    private final transient Look look;
    private final JTextArea text = new JTextArea();
    private final JTextArea problem = new JTextArea();
    private final JScrollPane scroll = new JScrollPane(text);
    private boolean filling;

    /** @param edited hears the text after each edit by hand */
    DraftText(Look look, Consumer<String> edited) {
        super(new BorderLayout());
        this.look = look;
        text.getAccessibleContext().setAccessibleName(Words.say("text of the profile"));
        problem.getAccessibleContext().setAccessibleName(Words.say("what is wrong with it"));
        problem.setEditable(false);
        problem.setLineWrap(true);
        problem.setWrapStyleWord(true);
        problem.setRows(4);
        text.getDocument().addDocumentListener(new Typed(() -> {
            if (!filling) {
                edited.accept(text.getText());
            }
        }));
        scroll.setBorder(BorderFactory.createEmptyBorder());
        add(scroll, BorderLayout.CENTER);
        add(problem, BorderLayout.SOUTH);
        restyle();
    }

    void restyle() {
        text.setFont(new Font(Font.MONOSPACED, Font.PLAIN, look.ipx(Look.AXIS)));
        text.setForeground(look.theme().ink());
        text.setBackground(look.theme().sheet());
        text.setCaretColor(look.theme().ink());
        problem.setFont(look.regular(Look.BODY));
        problem.setBackground(look.theme().sheet());
        problem.setForeground(look.theme().ink());
        problem.setBorder(BorderFactory.createCompoundBorder(
                BorderFactory.createMatteBorder(2, 0, 0, 0, look.theme().rule()),
                BorderFactory.createEmptyBorder(look.ipx(8), look.ipx(12), look.ipx(8), look.ipx(12))));
        text.setBorder(BorderFactory.createEmptyBorder(look.ipx(8), look.ipx(12), look.ipx(8), look.ipx(12)));
    }

    void fill(String newText) {
        filling = true;
        int caret = text.getCaretPosition();
        text.setText(newText);
        text.setCaretPosition(Math.min(caret, newText.length()));
        filling = false;
    }

    String text() {
        return text.getText();
    }

    void problems(List<Problem> problems) {
        text.getHighlighter().removeAllHighlights();
        Optional<Problem> first = problems.stream()
                .filter(p -> p.severity() == Severity.ERROR)
                .findFirst()
                .or(() -> problems.stream().findFirst());
        problem.setForeground(
                problems.stream().anyMatch(p -> p.severity() == Severity.ERROR)
                        ? look.theme().fault()
                        : look.theme().ink());
        problem.setText(first.map(
                        p -> Words.say("Line {0}, column {1}: {2}", p.line(), p.column(), Words.told(p.message()))
                                + (problems.size() > 1 ? "  " + Words.say("({0} in all)", problems.size()) : ""))
                .orElse(text.getText().isBlank() ? "" : Words.say("Nothing is wrong with it.")));
        for (Problem one : problems) {
            mark(one.line() - 1);
        }
    }

    private void mark(int line) {
        if (line < 0 || line >= text.getLineCount()) {
            return;
        }
        try {
            text.getHighlighter()
                    .addHighlight(
                            text.getLineStartOffset(line),
                            text.getLineEndOffset(line),
                            new DefaultHighlighter.DefaultHighlightPainter(
                                    look.theme().settled()));
        } catch (BadLocationException e) {
            throw new IllegalStateException("line " + line + " was there a moment ago", e);
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
