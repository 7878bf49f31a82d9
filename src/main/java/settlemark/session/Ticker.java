package settlemark.session;

import java.time.Instant;

/** Time, passed in. The real one lives in app; tests and fast replays bring their own. */
public interface Ticker {
    /** Monotonic nanoseconds since this ticker's start; time that the computer slept is included. */
    long nanos();

    /** The wall clock, for labels only. */
    Instant wall();
}
