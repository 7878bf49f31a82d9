package settlemark.ui;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.List;
import java.util.function.Consumer;
import javax.accessibility.AccessibleContext;
import javax.swing.JButton;

/**
 * A button that names its act and its key. Never under 20 mm in either direction. Unavailable, it is dashed and says
 * why; the primary one is filled and, while a reading is armed, holds the gap of each channel.
 */
final class ActButton extends JButton {
    private final transient Look look;
    private final boolean primary;
    private Choice choice;
    private transient List<Gap> gaps = List.of();
    private boolean terse;
    private boolean ringed;

    ActButton(Look look, Choice choice, boolean primary, Consumer<Deed> perform) {
        this.look = look;
        this.choice = choice;
        this.primary = primary;
        setContentAreaFilled(false);
        setBorderPainted(false);
        setFocusPainted(false);
        setRequestFocusEnabled(false);
        setRolloverEnabled(true);
        setOpaque(false);
        addActionListener(e -> perform.accept(this.choice.deed()));
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent event) {
                ring(true);
            }

            @Override
            public void focusLost(FocusEvent event) {
                ring(false);
            }
        });
        show(choice, List.of());
    }

    private void ring(boolean newRinged) {
        ringed = newRinged;
        repaint();
    }

    Choice choice() {
        return choice;
    }

    void show(Choice newChoice, List<Gap> newGaps) {
        AccessibleContext context = getAccessibleContext();
        context.setAccessibleName(
                Words.say("{0}, key {1}", newChoice.title(), newChoice.deed().label()));
        context.setAccessibleDescription(newChoice.available() ? newChoice.hint() : newChoice.why());
        setEnabled(newChoice.available());
        if (!newChoice.equals(choice) || !newGaps.equals(gaps)) {
            choice = newChoice;
            gaps = List.copyOf(newGaps);
            revalidate();
            repaint();
        }
    }

    /** Leaves out what the small line says besides the key, where there is no room for it. */
    void terse(boolean newTerse) {
        if (newTerse != terse) {
            terse = newTerse;
            repaint();
        }
    }

    /** Width in which this primary button can say its title in one line. */
    int titleWidth() {
        return (int) Math.ceil(Look.width(choice.title(), look.semiBold(Look.LABEL)) + look.px(110));
    }

    @Override
    public Dimension getPreferredSize() {
        double words = Math.max(
                Look.width(choice.title(), look.semiBold(Look.LABEL)), Look.width(under(), look.regular(Look.BODY)));
        int width = (int) Math.ceil(Math.max(words + look.px(28), look.mm(Look.READABLE_MM)));
        return new Dimension(width, look.buttonPx());
    }

    /** The small line: the key, and what else there is to say. */
    private String under() {
        String more = choice.available() ? choice.hint() : choice.why();
        return primary || terse || more.isEmpty()
                ? choice.deed().label()
                : choice.deed().label() + ", " + more;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Pen pen = new Pen(graphics, look);
        try {
            boolean waiting = primary && !gaps.isEmpty();
            boolean filled = primary && (isEnabled() || waiting);
            Color ground = filled ? pen.theme().primary() : pen.theme().sheet();
            Color ink = filled ? pen.theme().primaryText() : pen.theme().ink();
            if (getModel().isPressed()) {
                Color swap = ground;
                ground = ink;
                ink = swap;
            }
            box(pen, ground, isEnabled() || waiting);
            if (primary) {
                primary(
                        pen,
                        filled ? ink : pen.theme().ink2(),
                        filled ? ink : pen.theme().ink2(),
                        ground);
            } else {
                other(pen, isEnabled() ? ink : pen.theme().ink2());
            }
        } finally {
            pen.dispose();
        }
    }

    private void box(Pen pen, Color ground, boolean solid) {
        double ring = Look.FOCUS_RING + 2;
        double w = getWidth();
        double h = getHeight();
        double stroke = getModel().isRollover() && solid ? 3 : Look.OUTLINE;
        var box = Pen.box(ring, ring, w - 2 * ring, h - 2 * ring, stroke, Look.RADIUS);
        if (solid) {
            pen.fill(ground, box);
            pen.outline(pen.theme().ink(), stroke, box);
        } else {
            pen.fill(pen.theme().fold(), box);
            pen.dashed(pen.theme().rule(), stroke, 6, 4, box);
        }
        if (ringed) {
            pen.outline(
                    pen.theme().series().get(1),
                    Look.FOCUS_RING,
                    Pen.box(0, 0, w, h, Look.FOCUS_RING, Look.RADIUS + 3));
        }
    }

    private void other(Pen pen, Color ink) {
        double middle = getWidth() / 2.0;
        double room = getWidth() - look.px(14);
        pen.fitCentred(choice.title(), look.semiBold(Look.LABEL), ink, middle, getHeight() / 2.0 - look.px(1), room);
        Color second = isEnabled() && !getModel().isPressed() ? pen.theme().ink2() : ink;
        pen.fitCentred(under(), look.regular(Look.BODY), second, middle, getHeight() / 2.0 + look.px(22), room);
    }

    private void primary(Pen pen, Color ink, Color second, Color ground) {
        boolean narrow = getWidth() < look.px(260);
        double x = look.px(narrow ? 14 : 24);
        double right = getWidth() - look.px(narrow ? 12 : 20);
        Font small = look.regular(Look.BODY);
        if (isEnabled()) {
            pen.textRight(choice.deed().label(), small, second, right, getHeight() / 2.0 + look.px(5));
            right -= Look.width(choice.deed().label(), small) + look.px(20);
        }
        String under = choice.available() ? choice.hint() : choice.why();
        double words = Math.max(Look.width(choice.title(), look.semiBold(Look.LABEL)), Look.width(under, small));
        double each = look.px(43);
        double bars = gaps.size() * each;
        if (bars > 0 && x + words + look.px(16) + bars <= right) {
            bars(pen, right - bars, each, ink, ground);
            right -= bars + look.px(12);
        }
        words(pen, x, right - x, ink, second, under);
    }

    /** Title and small line; a title that is too long takes both lines, and what it displaces is still spoken. */
    private void words(Pen pen, double x, double room, Color ink, Color second, String under) {
        double middle = getHeight() / 2.0;
        double size = Look.LABEL;
        while (size > Look.NAME && Look.width(choice.title(), look.semiBold(size)) > room) {
            size -= 1;
        }
        Font title = look.semiBold(size);
        List<String> lines = Pen.wrap(choice.title(), title, room);
        double lower = middle + Math.min(look.px(22), middle - look.px(7));
        pen.fit(lines.get(0), title, ink, x, middle - look.px(2), room);
        if (lines.size() > 1) {
            pen.fit(String.join(" ", lines.subList(1, lines.size())), title, ink, x, lower, room);
        } else {
            double fitting = Look.BODY;
            while (fitting > Look.AXIS && Look.width(under, look.regular(fitting)) > room) {
                fitting -= 1;
            }
            Font small = look.regular(fitting);
            pen.text(fit(under, small, room), small, second, x, lower);
        }
    }

    private void bars(Pen pen, double left, double each, Color ink, Color ground) {
        double height = look.px(18);
        GapBar.Colors colors = new GapBar.Colors(ink, ink, ground);
        for (int i = 0; i < gaps.size(); i++) {
            double x = left + i * each;
            GapBar.draw(pen, gaps.get(i), x, (getHeight() - height) / 2, each - look.px(7), height, colors);
        }
    }

    /** As many whole words as there is room for; the whole text is in the accessible description. */
    private static String fit(String words, Font font, double room) {
        String text = words;
        while (Look.width(text, font) > room && text.contains(" ")) {
            text = text.substring(0, text.lastIndexOf(' '));
        }
        return text;
    }
}
