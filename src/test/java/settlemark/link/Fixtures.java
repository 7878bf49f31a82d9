package settlemark.link;

import java.time.Instant;
import java.util.concurrent.ThreadFactory;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.ProbeAddress;
import settlemark.session.Ticker;

/** What every test of a link needs. */
final class Fixtures {
    static final Profile PROFILE = ProfileLibrary.get("plain-line");

    static final ThreadFactory THREADS = task -> {
        Thread thread = new Thread(task);
        thread.setDaemon(true);
        return thread;
    };

    private Fixtures() {}

    static Ticker ticker() {
        long start = System.nanoTime();
        return new Ticker() {
            @Override
            public long nanos() {
                return System.nanoTime() - start;
            }

            @Override
            public Instant wall() {
                return Instant.EPOCH;
            }
        };
    }

    static ProbeAddress serial(Object path) {
        return new ProbeAddress("serial", path.toString());
    }
}
