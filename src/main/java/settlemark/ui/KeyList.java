package settlemark.ui;

import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.accessibility.AccessibleRole;

/** Every key and what it does, over the strip until it is left. */
final class KeyList extends Painted {
    private List<Line> lines = List.of();

    /** A key and what it does. */
    record Line(String key, String words) {}

    KeyList(Look look) {
        super(look, AccessibleRole.LIST);
    }

    /** Every key of a place. */
    static List<Line> of(Deed.Place place) {
        return Deed.of(place).stream().map(d -> new Line(d.label(), d.words())).toList();
    }

    /** The keys of a job. */
    void list(boolean demo) {
        List<Line> deeds = new ArrayList<>();
        for (Deed deed : Deed.of(Deed.Place.JOB)) {
            if (demo || !deed.demoOnly()) {
                deeds.add(new Line(deed.label(), deed.words()));
            }
        }
        list(deeds);
    }

    void list(List<Line> newLines) {
        lines = List.copyOf(newLines);
        sentence(lines.stream().map(l -> l.key() + ": " + l.words()).collect(Collectors.joining("; ")));
        repaint();
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        pen.outline(pen.theme().ink(), Look.OPEN_OUTLINE, Pen.box(0, 0, getWidth(), getHeight(), Look.OPEN_OUTLINE, 0));
        pen.text(Words.say("Keys"), look.semiBold(Look.STEP), pen.theme().ink(), look.px(28), look.px(44));
        pen.fit(
                Words.say("Esc or ? to go back"),
                look.regular(Look.BODY),
                pen.theme().ink2(),
                look.px(28) + Look.width(Words.say("Keys"), look.semiBold(Look.STEP)) + look.px(24),
                look.px(44),
                getWidth() / 2.0);
        int half = Math.max(1, (lines.size() + 1) / 2);
        // Words in two lines reach half a line below their row.
        double below = Pen.lineHeight(look.regular(Look.AXIS)) / 2;
        double step = Math.min(look.px(38), (getHeight() - look.px(92) - below) / Math.max(1, half - 1));
        Font key = look.semiBold(Look.NAME);
        double keys = Math.min(
                getWidth() * 0.16,
                lines.stream().mapToDouble(l -> Look.width(l.key(), key)).max().orElse(0));
        for (int i = 0; i < lines.size(); i++) {
            double x = look.px(28) + (i / half) * getWidth() / 2.0;
            double y = look.px(86) + (i % half) * step;
            pen.fit(lines.get(i).key(), key, pen.theme().ink(), x, y, keys);
            double left = x + keys + look.px(20);
            words(pen, lines.get(i).words(), left, y, (i / half + 1) * getWidth() / 2.0 - look.px(12) - left, step);
        }
    }

    /** In one line, or in two where one would be too small to read. */
    private void words(Pen pen, String words, double x, double y, double room, double step) {
        Font one = look.regular(Look.NAME - 1);
        Font two = look.regular(Look.AXIS);
        boolean fits = Look.width(words, look.regular(Look.BODY - 1)) <= room;
        if (fits || step < 1.9 * Pen.lineHeight(two)) {
            pen.fit(words, one, pen.theme().ink2(), x, y, room);
            return;
        }
        List<String> both = Fitted.lines(words, two, room, 2);
        double line = y - (both.size() - 1) * Pen.lineHeight(two) / 2;
        for (String part : both) {
            pen.text(part, two, pen.theme().ink2(), x, line);
            line += Pen.lineHeight(two);
        }
    }
}
