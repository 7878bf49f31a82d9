package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.util.List;
import javax.accessibility.AccessibleRole;

/** What is said beside a field, in at most two lines. */
final class FieldNote extends Painted {
    private boolean wrong;

    FieldNote(Look look) {
        super(look, AccessibleRole.LABEL);
    }

    void say(String words, boolean newWrong) {
        wrong = newWrong;
        sentence(words);
        repaint();
    }

    @Override
    void draw(Pen pen) {
        Font font = look.regular(Look.BODY);
        if (Fitted.lines(sentence(), font, getWidth(), 9).size() > 2 || getHeight() < 2 * Pen.lineHeight(font)) {
            font = look.regular(Look.AXIS);
        }
        int most = Math.max(1, (int) (getHeight() / Pen.lineHeight(font)));
        List<String> lines = Fitted.lines(sentence(), font, getWidth(), most);
        Color ink = wrong ? pen.theme().ink() : pen.theme().ink2();
        double y = getHeight() / 2.0 + (2 - lines.size()) * Pen.lineHeight(font) / 2 - Pen.lineHeight(font) * 0.15;
        for (String line : lines) {
            pen.text(line, font, ink, 0, y);
            y += Pen.lineHeight(font);
        }
    }
}
