package settlemark.ui;

import java.awt.Font;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;

/** Words cut where there is no room for them; the whole of them is spoken, and an ellipsis says that more was said. */
final class Fitted {
    /** Letters narrower than that are hard to tell. */
    private static final double NARROWEST = 0.66;

    private static final String MORE = "\u2026";

    private Fitted() {}

    /** A font in which words have room: not smaller than the floor, then narrower, as far as that can be read. */
    static Font font(String words, Font font, double room, double floorPx) {
        double width = Look.width(words, font);
        if (width <= room || width <= 0) {
            return font;
        }
        double least = Math.min(floorPx, font.getSize2D());
        Font smaller = font.deriveFont((float) Math.max(least, Math.floor(font.getSize2D() * room / width)));
        double left = Look.width(words, smaller);
        return left <= room
                ? smaller
                : smaller.deriveFont(AffineTransform.getScaleInstance(Math.max(NARROWEST, room / left), 1));
    }

    static String words(String words, Font font, double room) {
        if (Look.width(words, font) <= room + 0.5) {
            return words;
        }
        String text = words;
        while (!text.isEmpty() && Look.width(text + MORE, font) > room) {
            text = text.substring(0, text.offsetByCodePoints(text.length(), -1));
        }
        return text.stripTrailing() + MORE;
    }

    static List<String> lines(String words, Font font, double room, int most) {
        List<String> all = Pen.wrap(words, font, room);
        if (all.size() <= most) {
            return all;
        }
        List<String> lines = new ArrayList<>(all.subList(0, most));
        lines.set(most - 1, words(String.join(" ", all.subList(most - 1, all.size())), font, room));
        return lines;
    }
}
