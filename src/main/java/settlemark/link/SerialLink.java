package settlemark.link;

import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;
import settlemark.link.SerialPlace.Port;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/**
 * One serial port and the thread that reads it. The thread reads, sees the device go, closes it and opens it again when
 * it is back; it never decodes.
 *
 * <p>That a device is gone shows in three ways, each enough: three failed reads in a row, a failed write, a missing node.
 * That the library still calls the port open proves nothing.
 */
final class SerialLink implements ProbeLink {
    private static final int BUFFER_BYTES = 4096;
    private static final int FAILED_READS = 3;
    /** Of a tenth of a second each, before the node is looked at. */
    private static final int QUIET_READS = 5;

    private static final long FIRST_RETRY_MILLIS = 100;
    private static final long LAST_RETRY_MILLIS = 1000;
    private static final long SOON_NANOS = 3_000_000_000L;
    private static final long STEADY_NANOS = 5_000_000_000L;

    private static final Duration SEND_PATIENCE = Duration.ofSeconds(1);
    private static final Duration DEAD_CLOSE_LIMIT = Duration.ofSeconds(3);
    // These three add up to less than the three seconds that a close may take.
    private static final long LISTENER_LIMIT_MILLIS = 300;
    private static final Duration THREAD_LIMIT = Duration.ofMillis(1000);
    private static final Duration CLOSE_LIMIT = Duration.ofMillis(1400);

    private final SerialPlace place;
    private final Ticker ticker;
    private final LinkListener listener;
    private final ThreadFactory threads;
    private final Thread thread;
    private final byte[] buffer = new byte[BUFFER_BYTES];

    /** Held during each delivery, so that none is under way when a close returns. */
    private final ReentrantLock delivery = new ReentrantLock();

    private final Condition closing = delivery.newCondition();
    private volatile boolean closed;
    private volatile boolean writeFailed;
    private volatile boolean inputDropped;
    private volatile @Nullable Port port;
    private long retryMillis = FIRST_RETRY_MILLIS;

    private SerialLink(SerialPlace place, Port port, Ticker ticker, LinkListener listener) {
        this.place = place;
        this.port = port;
        this.ticker = ticker;
        this.listener = listener;
        this.threads = place.threads();
        this.thread = threads.newThread(() -> run(port));
        this.thread.setName("link-" + place.name());
    }

    /** Opens the port and begins to read it. */
    static SerialLink start(SerialPlace place, Ticker ticker, LinkListener listener) throws LinkException {
        SerialLink link = new SerialLink(place, place.open(), ticker, listener);
        link.thread.start();
        return link;
    }

    @Override
    public void send(byte[] bytes) throws LinkException {
        Port now = port;
        if (closed || now == null) {
            throw new LinkException(place.path() + " is not connected: nothing can be sent until it is back");
        }
        switch (now.writer().write(bytes, SEND_PATIENCE)) {
            case TAKEN -> {}
            case DROPPED -> {
                inputDropped = true;
                throw new LinkException(place.path() + " did not take " + bytes.length + " bytes within "
                        + SEND_PATIENCE.toSeconds() + " s: check that the device is switched on");
            }
            case GONE -> {
                writeFailed = true;
                throw new LinkException(place.path() + " is gone: plug it in again");
            }
        }
    }

    @Override
    public void close() {
        silence();
        if (Thread.currentThread() == thread || Aside.ended(thread, THREAD_LIMIT)) {
            return;
        }
        Port stuck = port;
        if (stuck != null) {
            Aside.run(stuck::close, CLOSE_LIMIT, threads);
        }
    }

    boolean isClosed() {
        return closed;
    }

    /** From here on nothing is delivered. A listener that hangs in a delivery is waited for shortly. */
    private void silence() {
        boolean held = false;
        try {
            held = delivery.tryLock(LISTENER_LIMIT_MILLIS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        closed = true;
        if (held) {
            closing.signalAll();
            delivery.unlock();
        }
    }

    private void run(Port first) {
        Port current = first;
        try {
            changed(LinkChange.UP, place.upWords(current));
            while (!closed) {
                long sinceNanos = ticker.nanos();
                pump(current);
                long upNanos = ticker.nanos() - sinceNanos;
                retryMillis = upNanos > STEADY_NANOS ? FIRST_RETRY_MILLIS : retryMillis;
                changed(LinkChange.LOST, place.lostWords(upNanos < SOON_NANOS));
                discard(current);
                current = reopen(current);
            }
        } finally {
            discard(current);
        }
    }

    /** Reads until the device is gone or the link is closed. */
    private void pump(Port current) {
        int failed = 0;
        int quiet = 0;
        while (!closed && !writeFailed && failed < FAILED_READS) {
            int count = current.tty().read(buffer);
            quiet = count == 0 ? quiet + 1 : 0;
            failed = count < 0 ? failed + 1 : 0;
            if (count > 0) {
                arrived(count);
            } else if (quiet >= QUIET_READS) {
                quiet = 0;
                failed = place.present(current) ? 0 : FAILED_READS;
            }
            if (inputDropped) {
                inputDropped = false;
                changed(LinkChange.OVERRUN, place.path() + " took no bytes; what waited in the port was dropped");
            }
        }
    }

    /** Tries until the device is back or the link is closed; a node that gives nothing but errors is not back. */
    private Port reopen(Port gone) {
        writeFailed = false;
        while (pause(retryMillis)) {
            retryMillis = Math.min(2 * retryMillis, LAST_RETRY_MILLIS);
            Port again = tryOpen();
            int count = again == null ? -1 : again.tty().read(buffer);
            if (again == null) {
                continue;
            }
            if (count < 0) {
                discard(again);
                continue;
            }
            port = again;
            changed(LinkChange.BACK, place.backWords(again));
            arrived(count);
            return again;
        }
        return gone;
    }

    private @Nullable Port tryOpen() {
        try {
            return place.open();
        } catch (LinkException e) {
            // Not there yet, or there and not yet ours: the rules that give it to us run a moment after it appears.
            return null;
        }
    }

    /** Returns false as soon as the link is closed. */
    private boolean pause(long millis) {
        delivery.lock();
        try {
            long left = TimeUnit.MILLISECONDS.toNanos(millis);
            while (!closed && left > 0) {
                left = closing.awaitNanos(left);
            }
        } catch (InterruptedException e) {
            // Nobody else knows this thread; a close sets the flag besides.
            return !closed;
        } finally {
            delivery.unlock();
        }
        return !closed;
    }

    private void discard(Port current) {
        port = null;
        Aside.run(current::close, DEAD_CLOSE_LIMIT, threads);
    }

    private void arrived(int count) {
        if (count > 0) {
            Chunk chunk = new Chunk(ticker.nanos(), Arrays.copyOf(buffer, count));
            deliver(() -> listener.arrived(chunk));
        }
    }

    private void changed(LinkChange change, String words) {
        long nanos = ticker.nanos();
        deliver(() -> listener.changed(nanos, change, words));
    }

    private void deliver(Runnable call) {
        delivery.lock();
        try {
            if (!closed) {
                call.run();
            }
        } finally {
            delivery.unlock();
        }
    }
}
