package settlemark.ui;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;

/** A button with words and nothing else. */
class PlainButton extends WordButton {
    private final String words;

    PlainButton(Look look, String words, Runnable pressed) {
        super(look, pressed);
        this.words = words;
        getAccessibleContext().setAccessibleName(words);
    }

    String said() {
        return words;
    }

    @Override
    void words(Pen pen, Color ink, Color second) {
        double room = getWidth() - look.px(26);
        Font font = look.semiBold(Look.BODY);
        pen.text(
                Fitted.words(said(), font, room),
                font,
                isEnabled() ? ink : second,
                look.px(13),
                getHeight() / 2.0 + look.px(5));
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension((int) Look.width(words, look.semiBold(Look.BODY)) + look.ipx(34), look.ipx(50));
    }
}
