package settlemark.link;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkListener;

/** What a link tells its listener, and its end: once silenced, nothing more is told. */
final class BleVoice {
    private static final long LISTENER_LIMIT_MILLIS = 300;

    private final LinkListener listener;
    private final ReentrantLock delivery = new ReentrantLock();
    private final Condition ending = delivery.newCondition();
    private volatile boolean silent;

    BleVoice(LinkListener listener) {
        this.listener = listener;
    }

    boolean isSilent() {
        return silent;
    }

    void arrived(Chunk chunk) {
        tell(() -> listener.arrived(chunk));
    }

    void changed(long timeNanos, LinkChange change, String words) {
        tell(() -> listener.changed(timeNanos, change, words));
    }

    /** A listener that hangs in a delivery is waited for shortly. */
    void silence() {
        boolean held = false;
        try {
            held = delivery.tryLock(LISTENER_LIMIT_MILLIS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        silent = true;
        if (held) {
            ending.signalAll();
            delivery.unlock();
        }
    }

    /** Waits, but no longer than until the end. */
    void pause(long nanos) {
        delivery.lock();
        try {
            long left = nanos;
            while (!silent && left > 0) {
                left = ending.awaitNanos(left);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            delivery.unlock();
        }
    }

    private void tell(Runnable call) {
        delivery.lock();
        try {
            if (!silent) {
                call.run();
            }
        } finally {
            delivery.unlock();
        }
    }
}
