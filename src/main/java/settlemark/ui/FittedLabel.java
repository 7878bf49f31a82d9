package settlemark.ui;

import java.awt.Font;
import javax.swing.JLabel;

/** A label whose words are never cut: where it is given less room than they want, they become smaller or narrower. */
final class FittedLabel extends JLabel {
    private static final double FLOOR = 0.5;
    private transient Font whole = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

    FittedLabel() {
        this("");
    }

    FittedLabel(String words) {
        super(words);
    }

    @Override
    public void setFont(Font font) {
        whole = font;
        super.setFont(font);
    }

    @Override
    public void setText(String words) {
        if (whole != null) {
            super.setFont(whole);
        }
        super.setText(words);
    }

    @Override
    public void setBounds(int x, int y, int width, int height) {
        super.setBounds(x, y, width, height);
        String words = getText();
        if (words != null && !words.isEmpty() && width > 0) {
            double floor = Math.max(Look.AXIS, whole.getSize2D() * FLOOR);
            double room = width - 2.0;
            Font fitting = Fitted.font(words, whole, room, floor);
            // On the screen each letter takes whole pixels.
            while (getFontMetrics(fitting).stringWidth(words) > width && room > width * FLOOR) {
                room -= 3;
                fitting = Fitted.font(words, whole, room, floor);
            }
            if (!fitting.equals(getFont())) {
                super.setFont(fitting);
            }
        }
    }
}
