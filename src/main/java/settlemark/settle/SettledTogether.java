package settlemark.settle;

/**
 * All channels of a stage at once: ready while every one of them is settled, spoiled where one moves before the reading was
 * taken, and ready again when all are settled again. For one thread.
 */
public final class SettledTogether {
    /** How the channels of a stage stand. */
    public enum Standing {
        /** Not all have been settled at the same time yet. */
        WAITING,
        /** All are settled now. */
        READY,
        /** All were, and one has moved since. */
        SPOILED
    }

    private Standing standing = Standing.WAITING;
    private double sinceSeconds = Double.NaN;
    private String words = "";

    /** Forgets what was: another stage, or another act. */
    public void restart() {
        standing = Standing.WAITING;
        sinceSeconds = Double.NaN;
        words = "";
    }

    /**
     * What is so at a time.
     *
     * @param mover the first channel that is not settled, empty where all are
     * @param why what is said of it; not looked at where it {@link #changes} nothing
     * @return whether the standing is another one now
     */
    public boolean see(double timeSeconds, String mover, String why) {
        Standing now = after(!mover.isEmpty());
        if (now == standing) {
            return false;
        }
        standing = now;
        sinceSeconds = timeSeconds;
        words = now == Standing.READY ? "all settled" : mover + " moved before the reading was taken: " + why;
        return true;
    }

    /** Whether the standing would be another one with a channel that moves, or with none. */
    public boolean changes(boolean moving) {
        return after(moving) != standing;
    }

    private Standing after(boolean moving) {
        if (!moving) {
            return Standing.READY;
        }
        return standing == Standing.WAITING ? Standing.WAITING : Standing.SPOILED;
    }

    public Standing standing() {
        return standing;
    }

    /** Since when it stands so; NaN before all were settled the first time. */
    public double sinceSeconds() {
        return sinceSeconds;
    }

    /** What happened, in words; empty before all were settled the first time. */
    public String words() {
        return words;
    }
}
