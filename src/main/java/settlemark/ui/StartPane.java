package settlemark.ui;

import java.awt.CardLayout;
import java.awt.Component;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import javax.swing.JPanel;
import settlemark.chart.Ribbon;
import settlemark.job.JobPlan;
import settlemark.job.StepKind;

/** The whole window before there is a session: head, words, the strip with its one open column, and the buttons. */
final class StartPane extends FramePane {
    /** Most of the width that what is still to come takes, as long as it can be read. */
    private static final double FOLDED_PART = 0.3;

    private final StepBar step;
    private final CardLayout cards = new CardLayout();
    private final JPanel pages = new JPanel(cards);
    private final Column column;
    private final List<Sliver> left = new ArrayList<>();
    private final List<Sliver> right = new ArrayList<>();
    private final InlineRow inline;
    private final transient Consumer<StartPage> opener;

    StartPane(Look look, Consumer<Deed> perform, Consumer<StartPage> opener) {
        super(look, Deed.Place.START, Words.say("before a job"), perform);
        this.opener = opener;
        step = new StepBar(look);
        column = new Column(look);
        inline = new InlineRow(look);
        // The pages lie on top of their column.
        between(step, pages, column, inline);
    }

    void page(StartPage page, JComponent face) {
        pages.add(face, page.name());
    }

    void open(StartPage page, JobPlan plan, boolean plateDone) {
        cards.show(pages, page.name());
        column.open(page, plan);
        left.forEach(this::remove);
        right.forEach(this::remove);
        left.clear();
        right.clear();
        if (page != StartPage.PLATE) {
            left.add(sliver(Words.say("Plate"), page == StartPage.PROBES, StartPage.PLATE, plateDone));
        }
        if (page == StartPage.FIRST) {
            left.add(sliver(Words.say("Probes"), false, StartPage.PROBES, false));
        }
        if (page == StartPage.PLATE) {
            right.add(sliver(Words.say("Probes"), plateDone, StartPage.PROBES, false));
        }
        plan.steps().stream()
                .filter(s -> s.kind() != StepKind.PLATE && s.kind() != StepKind.PROBES)
                .forEach(s -> right.add(sliver(StepWords.narrow(s), false, StartPage.FIRST, false)));
        left.forEach(this::add);
        right.forEach(this::add);
        revalidate();
        repaint();
    }

    private Sliver sliver(String name, boolean canOpen, StartPage page, boolean done) {
        Sliver sliver = new Sliver(look, name, canOpen, () -> opener.accept(page));
        sliver.done(done);
        return sliver;
    }

    List<Sliver> slivers() {
        List<Sliver> all = new ArrayList<>(left);
        all.addAll(right);
        return all;
    }

    /** @param simulated a chosen probe is simulated, so the job will say so */
    void say(String words, String caution, String told, boolean simulated, String what) {
        title().say(simulated, what);
        step.plain(what.isEmpty());
        step.show(words, caution, told);
        column.simulated(simulated);
        revalidate();
    }

    @Override
    List<Component> underKeys() {
        return List.of(pages, column);
    }

    InlineRow inline() {
        return inline;
    }

    StepBar step() {
        return step;
    }

    void restyle() {
        inline.restyle();
        repaint();
    }

    @Override
    public void doLayout() {
        int width = getWidth();
        int y = layHead();
        int stepHeight = step.heightFor(width);
        step.setBounds(0, y, width, stepHeight);
        y += stepHeight;
        int bottom = inline.above(layFoot(), width);
        int high = Math.max(1, bottom - y);
        layKeys(y, bottom);
        int folded = Math.max(1, left.size() + right.size());
        int fitting = (int) (width * FOLDED_PART / folded);
        int wide = Math.max(StripLayout.leastSliver(look), Math.min(look.ipx(Sliver.WIDTH), fitting));
        int x = 0;
        for (Sliver sliver : left) {
            sliver.setBounds(x, y, wide, high);
            x += wide;
        }
        int open = Math.max(1, width - (left.size() + right.size()) * wide);
        column.setBounds(x, y, open, high);
        int head = column.headPx();
        int edge = (int) Look.OPEN_OUTLINE;
        pages.setBounds(x + edge, y + head, open - 2 * edge, Math.max(1, high - head - edge));
        x += open;
        for (Sliver sliver : right) {
            sliver.setBounds(x, y, wide, high);
            x += wide;
        }
    }

    @Override
    public boolean isOptimizedDrawingEnabled() {
        // The open page lies over its column's outline.
        return false;
    }

    /** The outline of the open column, its name and the ribbon. */
    private static final class Column extends Painted {
        private String name = "";
        private boolean simulated;

        Column(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        void open(StartPage page, JobPlan plan) {
            name = switch (page) {
                case FIRST -> "";
                case PLATE -> Words.say("Plate");
                case PROBES -> Words.say("Probes for {0}", Words.told(plan.title()));
            };
            sentence(Words.say("open column: {0}", name.isEmpty() ? Words.say("how to begin") : name));
            repaint();
        }

        void simulated(boolean newSimulated) {
            if (simulated != newSimulated) {
                simulated = newSimulated;
                revalidate();
                repaint();
            }
        }

        int headPx() {
            return name.isEmpty()
                    ? (int) Look.OPEN_OUTLINE
                    : Rows.head(look) + (simulated ? look.ipx(RibbonBar.HEIGHT) : 0);
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            double head = Rows.head(look);
            pen.fit(
                    name,
                    look.semiBold(Look.LABEL),
                    pen.theme().ink(),
                    look.px(14),
                    head / 2 + look.px(7),
                    getWidth() - look.px(28));
            if (simulated && !name.isEmpty()) {
                Ribbon.draw(
                        pen.g,
                        new Rectangle2D.Double(2, head, getWidth() - 4.0, look.px(RibbonBar.HEIGHT)),
                        pen.theme(),
                        look.px(1),
                        Words.say("SIMULATED"));
            }
            pen.outline(
                    pen.theme().ink(), Look.OPEN_OUTLINE, Pen.box(0, 0, getWidth(), getHeight(), Look.OPEN_OUTLINE, 0));
        }
    }
}
