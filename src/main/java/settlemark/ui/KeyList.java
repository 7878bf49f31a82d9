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
        pen.text("Keys", look.semiBold(Look.STEP), pen.theme().ink(), look.px(28), look.px(44));
        pen.text("Esc or ? to go back", look.regular(Look.BODY), pen.theme().ink2(), look.px(120), look.px(44));
        int half = Math.max(1, (lines.size() + 1) / 2);
        double step = Math.min(look.px(38), (getHeight() - look.px(72)) / half);
        Font key = look.semiBold(Look.NAME);
        Font words = look.regular(Look.NAME - 1);
        for (int i = 0; i < lines.size(); i++) {
            double x = look.px(28) + (i / half) * getWidth() / 2.0;
            double y = look.px(86) + (i % half) * step;
            pen.text(lines.get(i).key(), key, pen.theme().ink(), x, y);
            pen.text(lines.get(i).words(), words, pen.theme().ink2(), x + look.px(130), y);
        }
    }
}
