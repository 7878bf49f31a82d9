package settlemark.ui;

import java.awt.Graphics;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import javax.swing.JComponent;
import javax.swing.JPanel;
import settlemark.session.BenchView;

/**
 * All channels of a bench in as few columns as hold them, a head above those of each probe. Where even the most columns do
 * not hold them, a page of them is shown.
 */
final class BenchRows extends JPanel {
    private static final double LEAST_ROW = 26;
    private static final double MOST_ROW = 40;
    private static final double LEAST_COLUMN = 440;

    private final transient Look look;
    private final transient IntConsumer picked;
    private final List<BenchRow> rows = new ArrayList<>();
    private final List<BenchHead> heads = new ArrayList<>();
    private final JComponent nothing = new JPanel();
    private transient List<BenchView.Row> shown = List.of();
    private int page;
    private int perColumn = 1;
    private int columns = 1;

    /** @param picked gets the index of a row that was pressed */
    BenchRows(Look look, IntConsumer picked) {
        super(null);
        this.look = look;
        this.picked = picked;
        getAccessibleContext().setAccessibleName(Words.say("channels"));
    }

    void show(BenchView view, List<BenchView.Row> newRows, int selected, boolean digits) {
        shown = newRows;
        while (rows.size() < shown.size()) {
            int index = rows.size();
            BenchRow row = new BenchRow(look);
            row.addMouseListener(new MouseAdapter() {
                @Override
                public void mousePressed(MouseEvent event) {
                    picked.accept(index);
                }
            });
            rows.add(row);
            add(row);
        }
        List<settlemark.session.ProbeView> probes = view.snapshot().probes();
        while (heads.size() < probes.size()) {
            BenchHead head = new BenchHead(look);
            heads.add(head);
            add(head);
        }
        for (int i = 0; i < probes.size(); i++) {
            heads.get(i).show(probes.get(i));
        }
        long now = view.snapshot().timeNanos();
        for (int i = 0; i < shown.size(); i++) {
            rows.get(i).show(shown.get(i), now, i == selected, digits);
        }
        doLayout();
    }

    /** Goes to the page that holds a row. */
    void reveal(int index) {
        page = pageOf(index);
        doLayout();
    }

    private int pageOf(int index) {
        return index < rows.size() ? slots().indexOf(rows.get(index)) / Math.max(1, perColumn * columns) : 0;
    }

    int pages() {
        return Math.max(1, (int) Math.ceil((double) slots().size() / Math.max(1, perColumn * columns)));
    }

    int page() {
        return page;
    }

    /** The first row of the next page, or of the first after the last. */
    int firstOfPage(int wanted) {
        int target = Math.floorMod(wanted, pages());
        for (int i = 0; i < rows.size(); i++) {
            if (pageOf(i) == target) {
                return i;
            }
        }
        return 0;
    }

    /** Rows in a column, for going to the one beside. */
    int perColumn() {
        return perColumn;
    }

    List<BenchRow> rows() {
        return List.copyOf(rows);
    }

    /** Each in its place, column after column; a head does not stand alone at the foot of one. */
    private List<JComponent> slots() {
        List<JComponent> all = new ArrayList<>();
        for (JComponent part : inOrder()) {
            if (part instanceof BenchHead && perColumn > 1 && all.size() % perColumn == perColumn - 1) {
                all.add(nothing);
            }
            all.add(part);
        }
        return all;
    }

    private List<JComponent> inOrder() {
        List<JComponent> all = new ArrayList<>();
        int probe = -1;
        for (int i = 0; i < shown.size(); i++) {
            if (shown.get(i).probe() != probe) {
                probe = shown.get(i).probe();
                all.add(heads.get(probe));
            }
            all.add(rows.get(i));
        }
        return all;
    }

    @Override
    public void doLayout() {
        List<JComponent> all = inOrder();
        int least = look.ipx(LEAST_ROW);
        int fitting = Math.max(1, getHeight() / least);
        int most = Math.max(1, getWidth() / look.ipx(LEAST_COLUMN));
        columns = Math.max(1, Math.min(most, (int) Math.ceil((double) all.size() / fitting)));
        perColumn = Math.max(1, Math.min(fitting, (int) Math.ceil((double) all.size() / columns)));
        if (slots().size() > perColumn * columns && perColumn < fitting) {
            perColumn++;
        }
        page = Math.max(0, Math.min(page, pages() - 1));
        all = slots();
        int high = Math.max(1, Math.min(look.ipx(MOST_ROW), getHeight() / perColumn));
        int gap = columns > 1 ? look.ipx(10) : 0;
        int wide = (getWidth() - gap * (columns - 1)) / columns;
        int first = page * perColumn * columns;
        for (int i = 0; i < all.size(); i++) {
            int at = i - first;
            boolean seen = at >= 0 && at < perColumn * columns;
            all.get(i).setVisible(seen && all.get(i) != nothing);
            if (seen) {
                all.get(i).setBounds(at / perColumn * (wide + gap), at % perColumn * high, wide, high);
            }
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
