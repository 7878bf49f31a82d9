package settlemark.ui;

import java.awt.Graphics;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JPanel;
import org.jspecify.annotations.Nullable;
import settlemark.job.StepKind;
import settlemark.job.StepState;

/**
 * The job as a strip: its acts are columns in the order taken, and exactly one of them is open. The others are folded:
 * form cells with their readings where there is room for all of them, else slivers.
 */
final class Strip extends JPanel {
    private final transient Look look;
    private final transient Consumer<String> opener;
    private final OpenColumn open;
    private final RowHeads heads;
    private final Map<String, Fold> folds = new LinkedHashMap<>();
    private final RibbonBar leftRibbon;
    private final RibbonBar rightRibbon;
    private @Nullable Scene scene;
    private @Nullable StripLayout layout;

    Strip(Look look, OpenColumn open, Consumer<String> opener) {
        super(null);
        this.look = look;
        this.opener = opener;
        this.open = open;
        heads = new RowHeads(look);
        leftRibbon = new RibbonBar(look, 1);
        rightRibbon = new RibbonBar(look, 1);
        add(leftRibbon);
        add(rightRibbon);
        add(open);
        add(heads);
        getAccessibleContext().setAccessibleName(Words.say("strip of the job"));
    }

    void show(Scene newScene, boolean digits) {
        Scene before = scene;
        scene = newScene;
        open.show(newScene, digits);
        heads.show(newScene);
        leftRibbon.simulated(newScene.simulated());
        rightRibbon.simulated(newScene.simulated());
        columns(newScene);
        StripLayout wanted = layout(newScene);
        boolean moved =
                before == null || !before.open().key().equals(newScene.open().key()) || !wanted.equals(layout);
        if (moved) {
            place(newScene, wanted);
        }
        folded(newScene, wanted);
    }

    private void columns(Scene shown) {
        for (StepState step : shown.job().steps()) {
            if (!folds.containsKey(step.key())) {
                Fold fold = new Fold(look, step.key(), opener);
                folds.put(step.key(), fold);
                add(fold);
            }
        }
    }

    /** A column shows its reading as a form cell where it has one that the rows can hold. */
    static boolean withReading(StepState step) {
        StepKind kind = step.step().kind();
        return kind.tabled() && step.reading().isPresent() && step.done();
    }

    private StripLayout layout(Scene shown) {
        List<Boolean> withReading =
                shown.job().steps().stream().map(Strip::withReading).toList();
        return StripLayout.of(getWidth(), look, withReading, shown.index(), open.neededWidth());
    }

    private void place(Scene shown, StripLayout wanted) {
        layout = wanted;
        heads.setVisible(wanted.cells());
        heads.setBounds(0, 0, wanted.heads(), getHeight());
        int x = wanted.heads();
        List<StepState> steps = shown.job().steps();
        for (int i = 0; i < steps.size(); i++) {
            int width = wanted.widths().get(i);
            boolean isOpen = i == shown.index();
            Fold fold = fold(steps.get(i).key());
            fold.setVisible(!isOpen);
            if (isOpen) {
                open.setBounds(x, 0, width, getHeight());
                ribbons(x, x + width, wanted.heads());
            } else {
                fold.setBounds(x, 0, width, getHeight());
            }
            x += width;
        }
        open.revalidate();
        repaint();
    }

    private void ribbons(int openLeft, int openRight, int from) {
        int top = Rows.head(look);
        int height = look.ipx(RibbonBar.HEIGHT);
        leftRibbon.setBounds(from, top, Math.max(0, openLeft - from), height);
        rightRibbon.setBounds(openRight, top, Math.max(0, getWidth() - openRight), height);
    }

    private void folded(Scene shown, StripLayout wanted) {
        String group = "";
        for (StepState step : shown.job().steps()) {
            Fold fold = fold(step.key());
            boolean first = !step.step().group().equals(group);
            if (fold.isVisible()) {
                fold.show(shown, step, wanted.cells() && withReading(step), first);
                group = withReading(step) ? step.step().group() : "";
            } else {
                group = "";
            }
        }
    }

    private Fold fold(String key) {
        Fold fold = folds.get(key);
        if (fold == null) {
            throw new IllegalStateException("no column " + key);
        }
        return fold;
    }

    /** The columns as they stand, the open one among them, from the left. */
    List<Painted> folds() {
        return new ArrayList<>(folds.values());
    }

    @Override
    public void doLayout() {
        Scene shown = scene;
        if (shown != null) {
            StripLayout wanted = layout(shown);
            place(shown, wanted);
            folded(shown, wanted);
        }
    }

    @Override
    public boolean isOptimizedDrawingEnabled() {
        // The ribbons lie over the folded columns.
        return false;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().fold());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
