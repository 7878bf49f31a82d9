package settlemark.link;

import java.time.Duration;
import java.util.concurrent.ThreadFactory;

/** Runs a call into a driver beside the caller, because a driver whose device is gone may never return from it. */
final class Aside {
    private Aside() {}

    /** Returns whether the call ended within the limit; else its thread is left behind with it. */
    static boolean run(Runnable call, Duration limit, ThreadFactory threads) {
        Thread thread = threads.newThread(call);
        thread.setName("link-aside");
        thread.setDaemon(true);
        thread.start();
        return ended(thread, limit);
    }

    /** Waits for a thread's end, until the limit or an interruption, which is kept. */
    static boolean ended(Thread thread, Duration limit) {
        try {
            thread.join(Math.max(1, limit.toMillis()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return !thread.isAlive();
    }
}
