package settlemark.ui;

import java.awt.Font;
import java.util.ArrayList;
import java.util.List;

/** Words cut where there is no room for them; the whole of them is spoken, and an ellipsis says that more was said. */
final class Fitted {
    private static final String MORE = "\u2026";

    private Fitted() {}

    static String words(String words, Font font, double room) {
        if (Look.width(words, font) <= room) {
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
