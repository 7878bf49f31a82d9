package settlemark.ui;

import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JPanel;

/**
 * What panes that have the whole window share: the head, the buttons at the foot, and the list of keys over what lies
 * between them.
 */
abstract class FramePane extends JPanel {
    final transient Look look;
    private final TitleBar title;
    private final KeyList keys;
    private final ButtonRow buttons;

    /**
     * @param place whose keys are heard while the pane has the focus
     * @param name for who does not see the pane
     */
    FramePane(Look look, Deed.Place place, String name, Consumer<Deed> perform) {
        super(null);
        this.look = look;
        title = new TitleBar(look);
        keys = new KeyList(look);
        keys.setVisible(false);
        buttons = new ButtonRow(look, perform);
        setFocusable(true);
        Keys.bind(this, place, perform);
        getAccessibleContext().setAccessibleName(name);
    }

    /** Adds head and buttons with what lies between them; of parts that overlap, the first lies on top. */
    final void between(Component... parts) {
        add(title);
        add(keys);
        for (Component part : parts) {
            add(part);
        }
        add(buttons);
    }

    /** What the list of keys takes the place of. */
    abstract List<Component> underKeys();

    final TitleBar title() {
        return title;
    }

    final ButtonRow buttons() {
        return buttons;
    }

    final void keys(boolean shown, List<KeyList.Line> lines) {
        keys.list(lines);
        keys.setVisible(shown);
        underKeys().forEach(part -> part.setVisible(!shown));
    }

    final boolean keysShown() {
        return keys.isVisible();
    }

    /** Lays the head out; returns where it ends, after the size of the window is known to the look. */
    final int layHead() {
        look.windowPx(getHeight());
        int high = look.ipx(Head.HEIGHT);
        title.setBounds(0, 0, getWidth(), high);
        return high;
    }

    /** Lays the buttons out; returns where they begin. */
    final int layFoot() {
        return buttons.atFoot(getWidth(), getHeight());
    }

    final void layKeys(int top, int bottom) {
        keys.setBounds(0, top, getWidth(), Math.max(1, bottom - top));
    }

    /** What shows where no part is. */
    Color ground() {
        return look.theme().window();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(ground());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
