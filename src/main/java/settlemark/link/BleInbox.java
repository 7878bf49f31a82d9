package settlemark.link;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import settlemark.measure.Chunk;
import settlemark.session.Ticker;

/** What has arrived for one link and waits for its thread; bounded, and what does not fit is counted. */
final class BleInbox {
    private final Ticker ticker;
    private final int capacity;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition filled = lock.newCondition();
    private List<Chunk> waiting = new ArrayList<>();
    private long dropped;
    private boolean woken;

    BleInbox(Ticker ticker, int capacity) {
        this.ticker = ticker;
        this.capacity = capacity;
    }

    /** Stamps the bytes with the time of now; empty values are no bytes. */
    void add(int input, byte[] bytes) {
        if (bytes.length == 0) {
            return;
        }
        lock.lock();
        try {
            if (waiting.size() < capacity) {
                // Stamped under the lock, so that times are in the order of the queue.
                waiting.add(new Chunk(ticker.nanos(), input, bytes));
            } else {
                dropped++;
            }
            filled.signal();
        } finally {
            lock.unlock();
        }
    }

    /** Now, or when the first of what waits came in: a link is up before its first value, not after it. */
    long sinceNanos() {
        lock.lock();
        try {
            return waiting.isEmpty() ? ticker.nanos() : waiting.get(0).timeNanos();
        } finally {
            lock.unlock();
        }
    }

    /** Ends a waiting. */
    void wake() {
        lock.lock();
        try {
            woken = true;
            filled.signal();
        } finally {
            lock.unlock();
        }
    }

    /** All that has arrived; waits for the first, at most that long. */
    List<Chunk> take(long nanos) {
        lock.lock();
        try {
            long left = nanos;
            while (waiting.isEmpty() && !woken && left > 0) {
                left = filled.awaitNanos(left);
            }
            woken = false;
            List<Chunk> taken = waiting;
            waiting = new ArrayList<>();
            return taken;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return List.of();
        } finally {
            lock.unlock();
        }
    }

    /** How many were dropped since the last call. */
    long takeDropped() {
        lock.lock();
        try {
            long count = dropped;
            dropped = 0;
            return count;
        } finally {
            lock.unlock();
        }
    }
}
