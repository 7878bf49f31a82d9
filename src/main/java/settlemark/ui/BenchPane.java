package settlemark.ui;

import java.awt.Component;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import settlemark.session.BenchView;

/** The whole window of a log of many channels: head, rows, the chosen one, and the buttons. */
final class BenchPane extends FramePane {
    private final RibbonBar ribbon;
    private final BenchRows rows;
    private final BenchDetail detail;

    BenchPane(Look look, Consumer<Deed> perform, IntConsumer picked) {
        super(look, Deed.Place.BENCH, Words.say("bench"), perform);
        ribbon = new RibbonBar(look, 1);
        rows = new BenchRows(look, picked);
        detail = new BenchDetail(look);
        between(ribbon, rows, detail);
    }

    /** @param shown its rows in the units of the screen */
    void show(BenchView view, List<BenchView.Row> shown, int selected, boolean digits, String what) {
        boolean simulated = view.snapshot().header().simulated();
        title().say(simulated, what);
        ribbon.simulated(simulated);
        rows.show(view, shown, selected, digits);
        if (selected < shown.size()) {
            detail.show(view, shown.get(selected), digits);
        }
    }

    @Override
    List<Component> underKeys() {
        return List.of(rows, detail);
    }

    BenchRows rows() {
        return rows;
    }

    BenchDetail detail() {
        return detail;
    }

    @Override
    public void doLayout() {
        int width = getWidth();
        int y = layHead();
        int bottom = layFoot();
        int band = look.ipx(RibbonBar.HEIGHT);
        ribbon.setBounds(0, y, width, band);
        layKeys(y, bottom);
        y += band;
        int chosen = Math.min(detail.neededHeight(), Math.max(1, (bottom - y) / 2));
        rows.setBounds(0, y, width, Math.max(1, bottom - y - chosen));
        detail.setBounds(0, bottom - chosen, width, chosen);
    }
}
