package settlemark.ui;

import java.awt.Graphics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JPanel;
import org.jspecify.annotations.Nullable;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.session.Snapshot;

/** The strip of a stored job: every column folded, and beside or between them the open stretch of time. */
final class ReviewStrip extends JPanel {
    private static final double CELL_LEAST = 60;
    private static final double CELL_MOST = 84;
    private static final double SLIVER = 26;
    private static final double HEADS = 76;

    private final transient Look look;
    private final ReviewColumn open;
    private final RowHeads heads;
    private final RibbonBar ribbon;
    private final transient Consumer<String> opener;
    private final Map<String, Fold> folds = new LinkedHashMap<>();
    private @Nullable ReviewScene scene;
    private @Nullable Object shownSession;

    /** @param opener gets the key of a folded column that was picked */
    ReviewStrip(Look look, ReviewColumn open, Consumer<String> opener) {
        super(null);
        this.look = look;
        this.open = open;
        this.opener = opener;
        heads = new RowHeads(look);
        ribbon = new RibbonBar(look, 1);
        add(ribbon);
        add(open);
        add(heads);
        getAccessibleContext().setAccessibleName(Words.say("strip of the session"));
    }

    void show(ReviewScene newScene) {
        ReviewScene before = scene;
        scene = newScene;
        Object session = List.of(
                newScene.session().workspace(), newScene.session().summary().number());
        if (!session.equals(shownSession)) {
            shownSession = session;
            folds.values().forEach(this::remove);
            folds.clear();
        }
        newScene.session().job().ifPresent(this::columns);
        ribbon.simulated(newScene.simulated());
        open.show(newScene);
        if (before == null || !before.step().equals(newScene.step()) || before.session() != newScene.session()) {
            revalidate();
            place();
        }
    }

    private void columns(JobState job) {
        for (StepState step : job.steps()) {
            if (!folds.containsKey(step.key())) {
                Fold fold = new Fold(look, step.key(), opener);
                folds.put(step.key(), fold);
                add(fold);
            }
        }
    }

    List<Fold> folds() {
        return List.copyOf(folds.values());
    }

    @Override
    public void doLayout() {
        place();
    }

    /** Form cells where there is room for all that have a reading, else slivers; the rest is the open column's. */
    private void place() {
        ReviewScene now = scene;
        Optional<Snapshot> replayed =
                now == null ? Optional.empty() : now.session().replayed();
        if (now == null || replayed.isEmpty() || now.session().job().isEmpty()) {
            heads.setVisible(false);
            ribbon.setVisible(false);
            open.setBounds(0, 0, getWidth(), getHeight());
            open.revalidate();
            return;
        }
        JobState job = now.session().job().get();
        List<StepState> steps = job.steps();
        long cells = steps.stream()
                .filter(s -> !s.key().equals(now.step()) && Strip.withReading(s))
                .count();
        long slivers = steps.stream().filter(s -> !s.key().equals(now.step())).count() - cells;
        double spare = getWidth() - open.neededWidth() - look.px(HEADS) - slivers * look.px(SLIVER);
        boolean asCells = cells > 0 && spare >= cells * look.px(CELL_LEAST);
        int cell = asCells ? (int) Math.min(look.px(CELL_MOST), spare / cells) : look.ipx(SLIVER);
        int from = asCells ? look.ipx(HEADS) : 0;
        Scene strip = scene(now, replayed.get(), job);
        heads.setVisible(asCells);
        heads.show(strip);
        heads.setBounds(0, 0, from, getHeight());
        int folded = (int) (cells * cell + slivers * look.ipx(SLIVER));
        int wide = Math.max(1, getWidth() - from - folded);
        int x = from;
        String group = "";
        boolean placed = false;
        for (StepState step : steps) {
            Fold fold = folds.get(step.key());
            if (fold == null) {
                continue;
            }
            boolean isOpen = step.key().equals(now.step());
            fold.setVisible(!isOpen);
            if (isOpen) {
                open.setBounds(x, 0, wide, getHeight());
                x += wide;
                placed = true;
                group = "";
            } else {
                boolean asCell = asCells && Strip.withReading(step);
                int width = asCell ? cell : look.ipx(SLIVER);
                fold.setBounds(x, 0, width, getHeight());
                fold.show(strip, step, asCell, !step.step().group().equals(group));
                group = asCell ? step.step().group() : "";
                x += width;
            }
        }
        if (!placed) {
            open.setBounds(x, 0, wide, getHeight());
        }
        ribbon.setVisible(true);
        ribbon.setBounds(from, Rows.head(look), getWidth() - from, look.ipx(RibbonBar.HEIGHT));
        open.revalidate();
        repaint();
    }

    private static Scene scene(ReviewScene now, Snapshot snapshot, JobState job) {
        StepState step = now.open().orElse(job.steps().get(0));
        Axes axes = now.axes().orElseThrow(() -> new IllegalStateException("a job has axes"));
        return new Scene(snapshot, job, step, Optional.empty(), 1, axes, RecordState.NONE);
    }

    @Override
    public boolean isOptimizedDrawingEnabled() {
        // The ribbon lies over the folded columns.
        return false;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().fold());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
