package settlemark.job;

/** How a value lies to its limit, with its uncertainty. */
public enum Outcome {
    /** The whole interval of the value with its expanded uncertainty is inside. */
    INSIDE(true, "inside"),
    /** The value is inside, but its uncertainty reaches over the limit. */
    CLOSE_INSIDE(true, "close, inside"),
    /** The value is outside, but its uncertainty reaches back in. */
    CLOSE_OUTSIDE(false, "close, outside"),
    /** The whole interval is outside. */
    OUTSIDE(false, "outside");

    private final boolean accepted;
    private final String word;

    Outcome(boolean accepted, String word) {
        this.accepted = accepted;
        this.word = word;
    }

    /** By simple acceptance (JCGM 106:2012, 8.2): the value itself decides. */
    public boolean accepted() {
        return accepted;
    }

    public String word() {
        return word;
    }
}
