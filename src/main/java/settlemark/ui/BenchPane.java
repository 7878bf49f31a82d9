package settlemark.ui;

import java.awt.Graphics;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import javax.swing.JPanel;
import settlemark.session.BenchView;

/** The whole window of a log of many channels: head, rows, the chosen one, and the buttons. */
final class BenchPane extends JPanel {
    private final transient Look look;
    private final TitleBar title;
    private final RibbonBar ribbon;
    private final BenchRows rows;
    private final BenchDetail detail;
    private final KeyList keys;
    private final ButtonRow buttons;

    BenchPane(Look look, Consumer<Deed> perform, IntConsumer picked) {
        super(null);
        this.look = look;
        title = new TitleBar(look);
        ribbon = new RibbonBar(look, 1);
        rows = new BenchRows(look, picked);
        detail = new BenchDetail(look);
        keys = new KeyList(look);
        keys.setVisible(false);
        buttons = new ButtonRow(look, perform);
        add(title);
        add(keys);
        add(ribbon);
        add(rows);
        add(detail);
        add(buttons);
        setFocusable(true);
        Keys.bind(this, Deed.Place.BENCH, perform);
        getAccessibleContext().setAccessibleName(Words.say("bench"));
    }

    /** @param shown its rows in the units of the screen */
    void show(BenchView view, List<BenchView.Row> shown, int selected, boolean digits, String what) {
        boolean simulated = view.snapshot().header().simulated();
        title.say(simulated, what);
        ribbon.simulated(simulated);
        rows.show(view, shown, selected, digits);
        if (selected < shown.size()) {
            detail.show(view, shown.get(selected), digits);
        }
    }

    void keys(boolean wanted, List<KeyList.Line> lines) {
        keys.list(lines);
        keys.setVisible(wanted);
        rows.setVisible(!wanted);
        detail.setVisible(!wanted);
    }

    boolean keysShown() {
        return keys.isVisible();
    }

    BenchRows rows() {
        return rows;
    }

    BenchDetail detail() {
        return detail;
    }

    ButtonRow buttons() {
        return buttons;
    }

    @Override
    public void doLayout() {
        int width = getWidth();
        look.windowPx(getHeight());
        int y = look.ipx(Head.HEIGHT);
        title.setBounds(0, 0, width, y);
        int bottom = buttons.atFoot(width, getHeight());
        int band = look.ipx(RibbonBar.HEIGHT);
        ribbon.setBounds(0, y, width, band);
        keys.setBounds(0, y, width, Math.max(1, bottom - y));
        y += band;
        int chosen = Math.min(detail.neededHeight(), Math.max(1, (bottom - y) / 2));
        rows.setBounds(0, y, width, Math.max(1, bottom - y - chosen));
        detail.setBounds(0, bottom - chosen, width, chosen);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().window());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
