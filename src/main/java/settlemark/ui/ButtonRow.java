package settlemark.ui;

import java.awt.Dimension;
import java.awt.Graphics;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
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
        getAccessibleContext().setAccessibleName(Words.say("what can be done now"));
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
        int[] widths = widths(ring, getWidth() - 2 * margin - others.size() * gap - leastPrimary(ring));
        for (int i = 0; i < others.size(); i++) {
            others.get(i).setBounds(x, look.ipx(1), widths[i], height);
            x += widths[i] + gap;
        }
        primary.setBounds(x, look.ipx(1), Math.max(0, getWidth() - x - margin), height);
    }

    /** What the large button must have: what it wants, but not more than a third of the row. */
    private int leastPrimary(int ring) {
        return primary.isVisible() ? Math.min(primary.titleWidth() + ring, getWidth() / 3) : 0;
    }

    /** Each as wide as it wants; where the row has less, the wider ones give way, never below 20 mm. */
    private int[] widths(int ring, int room) {
        int least = (int) Math.ceil(look.mm(Look.READABLE_MM)) + ring;
        int[] widths =
                others.stream().mapToInt(b -> b.getPreferredSize().width + ring).toArray();
        int over = IntStream.of(widths).sum() - room;
        int spare = IntStream.of(widths).map(w -> w - least).sum();
        if (over > 0 && spare > 0) {
            double part = Math.min(1, (double) over / spare);
            for (int i = 0; i < widths.length; i++) {
                widths[i] -= (int) Math.ceil(part * (widths[i] - least));
            }
        }
        return widths;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().window());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
