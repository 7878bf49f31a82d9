package settlemark.ui;

import java.util.ArrayList;
import java.util.List;

/**
 * How the width of the strip is shared: one open column gets what it needs, columns with readings become form cells
 * where there is room for all of them, everything else is a sliver. Folded columns give way first.
 *
 * @param heads width of the names of the rows, 0 where no form cells are shown
 * @param widths of the columns, in order
 * @param cells whether columns with readings are form cells
 */
record StripLayout(int heads, List<Integer> widths, boolean cells) {
    private static final double SLIVER = 26;

    /** A line of the smallest text, upright. */
    private static final double LEAST_SLIVER = 18;

    private static final int LEAST_SLIVER_PX = 22;

    private static final double CELL_LEAST = 60;
    private static final double CELL_MOST = 92;
    private static final double HEADS = 72;

    StripLayout {
        widths = List.copyOf(widths);
    }

    /**
     * @param withReading which columns have a reading to show
     * @param open index of the open column
     * @param needed width that its face needs
     */
    static StripLayout of(int width, Look look, List<Boolean> withReading, int open, int needed) {
        int slivers = 0;
        int cells = 0;
        for (int i = 0; i < withReading.size(); i++) {
            if (i != open) {
                cells += withReading.get(i) ? 1 : 0;
                slivers += withReading.get(i) ? 0 : 1;
            }
        }
        int sliver = sliver(width, look, withReading.size() - 1, needed);
        int heads = look.ipx(HEADS);
        int spare = width - needed - slivers * sliver - heads;
        boolean asCells = cells > 0 && spare >= cells * look.px(CELL_LEAST);
        int cell = asCells ? (int) Math.min(look.px(CELL_MOST), (double) spare / cells) : sliver;
        return shared(width, withReading, open, asCells ? heads : 0, sliver, cell, asCells);
    }

    static int leastSliver(Look look) {
        return Math.max(LEAST_SLIVER_PX, look.ipx(LEAST_SLIVER));
    }

    /** A sliver narrows a little before the open column has to. */
    private static int sliver(int width, Look look, int folded, int needed) {
        int usual = look.ipx(SLIVER);
        int fitting = folded == 0 ? usual : (width - needed) / folded;
        return Math.max(leastSliver(look), Math.min(usual, fitting));
    }

    private static StripLayout shared(
            int width, List<Boolean> withReading, int open, int heads, int sliver, int cell, boolean asCells) {
        List<Integer> widths = new ArrayList<>();
        int rest = width - heads;
        for (int i = 0; i < withReading.size(); i++) {
            int own = i == open ? 0 : withReading.get(i) ? cell : sliver;
            widths.add(own);
            rest -= own;
        }
        widths.set(open, Math.max(0, rest));
        return new StripLayout(heads, widths, asCells);
    }
}
