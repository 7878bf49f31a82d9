package settlemark.ui;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JPanel;

/** The acts of the open column, and at the right the primary one. Buttons stay the same objects while their act does. */
final class ButtonRow extends JPanel {
    private final transient Look look;
    private final transient Consumer<Deed> perform;
    private final ActButton primary;
    private final List<ActButton> others = new ArrayList<>();

    ButtonRow(Look look, Consumer<Deed> perform) {
        super(null);
        this.look = look;
        this.perform = perform;
        this.primary = new ActButton(look, Choice.no(Deed.PRIMARY, "", ""), true, perform);
        setOpaque(true);
        add(primary);
        getAccessibleContext().setAccessibleName("what can be done now");
    }

    void show(Choice newPrimary, List<Gap> gaps, List<Choice> choices) {
        primary.show(newPrimary, gaps);
        if (!deeds(choices).equals(others.stream().map(b -> b.choice().deed()).toList())) {
            rebuild(choices);
        }
        for (int i = 0; i < choices.size(); i++) {
            others.get(i).show(choices.get(i), List.of());
        }
    }

    private static List<Deed> deeds(List<Choice> choices) {
        return choices.stream().map(Choice::deed).toList();
    }

    private void rebuild(List<Choice> choices) {
        removeAll();
        List<ActButton> before = List.copyOf(others);
        others.clear();
        for (Choice choice : choices) {
            ActButton button = before.stream()
                    .filter(b -> b.choice().deed() == choice.deed())
                    .findFirst()
                    .orElseGet(() -> new ActButton(look, choice, false, perform));
            others.add(button);
            add(button);
        }
        add(primary);
        revalidate();
        repaint();
    }

    ActButton primary() {
        return primary;
    }

    List<ActButton> others() {
        return List.copyOf(others);
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(look.ipx(600), look.buttonPx() + look.ipx(14));
    }

    /** Lies at the foot of a pane; returns where what is above it ends. */
    int atFoot(int width, int height) {
        int top = height - getPreferredSize().height;
        setBounds(0, top, width, height - top);
        return top;
    }

    @Override
    public void doLayout() {
        int margin = look.ipx(5);
        int gap = Math.max(0, (int) Look.GRID - 2 * (int) (Look.FOCUS_RING + 2));
        int height = getHeight() - look.ipx(4);
        int x = margin;
        int ring = 2 * (int) (Look.FOCUS_RING + 2);
        others.forEach(b -> b.terse(false));
        int wanted = others.stream()
                .mapToInt(b -> b.getPreferredSize().width + ring + gap)
                .sum();
        boolean terse = getWidth() - wanted - 2 * margin < primary.titleWidth();
        others.forEach(b -> b.terse(terse));
        for (Component button : others) {
            int width = button.getPreferredSize().width + ring;
            button.setBounds(x, look.ipx(1), width, height);
            x += width + gap;
        }
        primary.setBounds(x, look.ipx(1), Math.max(0, getWidth() - x - margin), height);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().window());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
