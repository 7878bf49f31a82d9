package settlemark.ui;

/**
 * Where the parts of a column lie, the same in the open one and in folded ones, so that rows run through.
 *
 * @param head height of the head
 * @param ribbon height of the ribbon below it
 * @param foot height of the line of verdicts and times at the bottom
 * @param height of the whole column
 * @param lanes 1 or 2
 */
record Rows(int head, int ribbon, int foot, int height, int lanes) {
    static Rows of(Look look, int height, int lanes) {
        return new Rows(look.ipx(42), look.ipx(RibbonBar.HEIGHT), look.ipx(24), height, lanes);
    }

    int top() {
        return head + ribbon;
    }

    int bottom() {
        return Math.max(top() + lanes, height - foot);
    }

    int laneTop(int lane) {
        return top() + lane * (bottom() - top()) / lanes;
    }

    int laneBottom(int lane) {
        return laneTop(lane + 1);
    }
}
