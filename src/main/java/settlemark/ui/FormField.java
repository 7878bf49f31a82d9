package settlemark.ui;

import java.awt.Font;
import javax.accessibility.AccessibleRole;

/** One number or word of a form as it stands: its name, the box with the value, and the unit beside it. */
final class FormField extends Painted {
    static final double HEIGHT = 66;
    private final String name;
    private final boolean number;
    private String value = "";
    private String unit = "";

    FormField(Look look, String name, boolean number) {
        super(look, AccessibleRole.LABEL);
        this.name = name;
        this.number = number;
    }

    void show(String newValue, String newUnit) {
        sentence(name + ": " + newValue + (newUnit.isEmpty() ? "" : " " + newUnit));
        if (!newValue.equals(value) || !newUnit.equals(unit)) {
            value = newValue;
            unit = newUnit;
            repaint();
        }
    }

    @Override
    void draw(Pen pen) {
        pen.fit(name, look.regular(Look.BODY), pen.theme().ink2(), 0, look.px(16), getWidth());
        double top = look.px(22);
        double height = look.px(38);
        double width = number ? look.px(100) : getWidth() - look.px(12.0);
        pen.fill(pen.theme().fold(), 0, top, width, height);
        pen.outline(pen.theme().rule(), 1.2, Pen.box(0, top, width, height, 1.2, Look.RADIUS));
        double baseline = top + height / 2 + look.px(7);
        if (number) {
            pen.textRight(value, look.semiBold(Look.LABEL - 1), pen.theme().ink(), width - look.px(12), baseline);
            double left = width + look.px(10);
            pen.fit(unit, look.regular(Look.BODY), pen.theme().ink2(), left, baseline - 1, getWidth() - left);
        } else {
            pen.text(value, fitting(width - look.px(22)), pen.theme().ink(), look.px(11), baseline);
        }
    }

    private Font fitting(double room) {
        double size = Look.NAME;
        while (size > Look.AXIS && Look.width(value, look.regular(size)) > room) {
            size -= 1;
        }
        return look.regular(size);
    }
}
