package settlemark.ui;

import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.accessibility.AccessibleRole;

/** Every key and what it does, over the strip until it is left. */
final class KeyList extends Painted {
    private boolean demo;

    KeyList(Look look) {
        super(look, AccessibleRole.LIST);
    }

    void list(boolean newDemo) {
        demo = newDemo;
        sentence(deeds().stream().map(d -> d.label() + ": " + d.words()).collect(Collectors.joining("; ")));
        repaint();
    }

    private List<Deed> deeds() {
        List<Deed> deeds = new ArrayList<>();
        for (Deed deed : Deed.values()) {
            if (demo || !deed.demoOnly()) {
                deeds.add(deed);
            }
        }
        return deeds;
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        pen.outline(pen.theme().ink(), Look.OPEN_OUTLINE, Pen.box(0, 0, getWidth(), getHeight(), Look.OPEN_OUTLINE, 0));
        pen.text("Keys", look.semiBold(Look.STEP), pen.theme().ink(), look.px(28), look.px(44));
        pen.text("Esc or ? to go back", look.regular(Look.BODY), pen.theme().ink2(), look.px(120), look.px(44));
        List<Deed> deeds = deeds();
        int half = (deeds.size() + 1) / 2;
        double step = Math.min(look.px(38), (getHeight() - look.px(72)) / half);
        Font key = look.semiBold(Look.NAME);
        Font words = look.regular(Look.NAME - 1);
        for (int i = 0; i < deeds.size(); i++) {
            double x = look.px(28) + (i / half) * getWidth() / 2.0;
            double y = look.px(86) + (i % half) * step;
            pen.text(deeds.get(i).label(), key, pen.theme().ink(), x, y);
            pen.text(deeds.get(i).words(), words, pen.theme().ink2(), x + look.px(130), y);
        }
    }
}
