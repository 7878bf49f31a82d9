package settlemark.job;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.settle.StageReading;

/**
 * What the gauge showed, settled, before the cap went on. The cap moves the manifold before the person can say that it
 * is on, so the last settled reading but a few seconds counts, not the one at the moment of saying so.
 */
final class BeforeTheCap {
    /** A cap's own step needs this long to be noticed; this program's own. */
    private static final double NOTICE_SECONDS = 5;
    /** From the hand on the cap to the press that reports it; this program's own. */
    private static final double REPORT_SECONDS = 15;

    private @Nullable StageReading newer;
    private @Nullable StageReading older;
    private long seenNanos;

    /** Whether a settled reading is to be kept: asked at each sample, and answered seldom. */
    boolean due(long nowNanos) {
        return newer == null || nowNanos - newer.timeNanos() >= NOTICE_SECONDS * 1e9;
    }

    /** A settled reading while the screw is being turned. */
    void keep(StageReading settled) {
        older = newer;
        newer = settled;
    }

    /** It is settled at this time. */
    void standing(long nowNanos) {
        seenNanos = nowNanos;
    }

    /** Not settled for longer than a cap takes: the screw was turned, and what was settled is of another setting. */
    void moving(long nowNanos) {
        if ((nowNanos - seenNanos) / 1e9 > REPORT_SECONDS) {
            newer = null;
            older = null;
        }
    }

    /** The reading before the cap, empty where nothing was settled shortly before. */
    Optional<StageReading> reading(long nowNanos) {
        boolean lately = (nowNanos - seenNanos) / 1e9 <= REPORT_SECONDS;
        return lately ? Optional.ofNullable(older == null ? newer : older) : Optional.empty();
    }
}
