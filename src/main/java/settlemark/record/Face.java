package settlemark.record;

import java.util.ArrayList;
import java.util.List;

/**
 * A size and weight of type.
 *
 * @param size in points
 * @param bold the semi-bold cut
 */
record Face(double size, boolean bold) {
    static final Face TITLE = new Face(16, true);
    static final Face VERDICT = new Face(14, true);
    static final Face NAME = new Face(9, true);
    static final Face BODY = new Face(8, false);
    static final Face STRONG = new Face(8, true);
    static final Face VALUE = new Face(9.5, true);
    static final Face SMALL = new Face(7, false);
    static final Face FINE = new Face(6.4, false);

    double width(String text) {
        return Typeface.of(bold).width(Printable.of(text), size);
    }

    double lineHeight() {
        return size * 1.36;
    }

    /** The same face, smaller where the text would be wider than the room; not below three quarters. */
    Face fitting(String text, double room) {
        double width = width(text);
        return width <= room ? this : new Face(Math.max(size * 0.75, size * room / width), bold);
    }

    /** The text cut into lines that fit; a word longer than a line is broken. */
    List<String> wrap(String text, double room) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : Printable.of(text).strip().split(" +", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer) <= room) {
                line.setLength(0);
                line.append(longer);
            } else {
                if (!line.isEmpty()) {
                    lines.add(line.toString());
                }
                line.setLength(0);
                line.append(rest(word, room, lines));
            }
        }
        lines.add(line.toString());
        return lines;
    }

    /** Breaks full lines off a long word and returns what is left of it. */
    private String rest(String word, double room, List<String> lines) {
        String left = word;
        while (width(left) > room && left.length() > 1) {
            int end = 1;
            while (end < left.length() - 1 && width(left.substring(0, end + 1)) <= room) {
                end++;
            }
            lines.add(left.substring(0, end));
            left = left.substring(end);
        }
        return left;
    }

    /** The text on one line, cut with an ellipsis where it is too long even when smaller. */
    String cut(String text, double room) {
        String printable = Printable.of(text);
        if (width(printable) <= room) {
            return printable;
        }
        int end = printable.length();
        while (end > 0 && width(printable.substring(0, end) + "\u2026") > room) {
            end--;
        }
        return printable.substring(0, end).strip() + "\u2026";
    }
}
