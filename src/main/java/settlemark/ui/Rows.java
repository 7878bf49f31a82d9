package settlemark.ui;

/**
 * Where the parts of a column lie, the same in the open one and in folded ones, so that rows run through.
 *
 * @param head height of the head
 * @param ribbon height of the ribbon below it
 * @param foot height of the line of verdicts and times at the bottom
 * @param above between the ribbon and the first lane
 * @param between two lanes
 * @param height of the whole column
 * @param lanes 1 or 2
 */
record Rows(int head, int ribbon, int foot, int above, int between, int height, int lanes) {
    /** Height of the line of times and verdicts. */
    static final double FOOT = 26;

    static final double ABOVE = 6;
    private static final double BETWEEN = 14;

    static int head(Look look) {
        return look.ipx(look.tight() ? 34 : 42);
    }

    static Rows of(Look look, int height, int lanes) {
        return new Rows(
                head(look),
                look.ipx(RibbonBar.HEIGHT),
                look.ipx(FOOT),
                look.ipx(ABOVE),
                look.ipx(BETWEEN),
                height,
                lanes);
    }

    int top() {
        return head + ribbon;
    }

    int bottom() {
        return Math.max(top() + lanes, height - foot);
    }

    int laneTop(int lane) {
        return top() + above + lane * (laneHeight() + between);
    }

    int laneBottom(int lane) {
        return laneTop(lane) + laneHeight();
    }

    private int laneHeight() {
        return Math.max(1, (bottom() - top() - above - (lanes - 1) * between) / lanes);
    }
}
