package settlemark.link;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;
import settlemark.exchange.Exchange;
import settlemark.exchange.Outcome;
import settlemark.link.SerialPlace.Port;
import settlemark.profile.Profile;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.Ticker;

/**
 * One serial port with its links, one or, on a Modbus line, several; the thread that reads it, and the one that asks where
 * anything is asked. The reader sees the device go, closes it and opens it again when it is back; nobody here decodes.
 *
 * <p>That a device is gone shows in three ways, each enough: the system says so, three reads in a row or a write fail, the
 * node is missing. That the library still calls the port open proves nothing.
 */
final class Bus {
    private static final int BUFFER_BYTES = 4096;
    private static final int FAILED_READS = 3;
    /** Of a tenth of a second each, before the node is looked at. */
    private static final int QUIET_READS = 5;

    private static final long FIRST_RETRY_MILLIS = 100;
    private static final long LAST_RETRY_MILLIS = 1000;
    private static final long SOON_NANOS = 3_000_000_000L;
    private static final long STEADY_NANOS = 5_000_000_000L;
    private static final long LONGEST_WAIT_NANOS = 1_000_000_000L;

    private static final Duration SEND_PATIENCE = Duration.ofSeconds(1);
    private static final Duration DEAD_CLOSE_LIMIT = Duration.ofSeconds(3);
    // These three add up to less than the three seconds that a close may take.
    private static final long LISTENER_LIMIT_MILLIS = 300;
    private static final Duration THREAD_LIMIT = Duration.ofMillis(1000);
    private static final Duration CLOSE_LIMIT = Duration.ofMillis(1400);

    private final SerialPlace place;
    private final boolean shareable;
    private final Ticker ticker;
    private final ThreadFactory threads;
    private final Thread thread;
    private final Exchange exchange;
    private final List<SerialLink> links = new CopyOnWriteArrayList<>();
    private final byte[] buffer = new byte[BUFFER_BYTES];

    /** Held during each delivery, so that none is under way when a close returns; guards the exchange. */
    private final ReentrantLock delivery = new ReentrantLock();

    private final Condition changed = delivery.newCondition();
    private volatile boolean closed;
    private volatile boolean writeFailed;
    private volatile boolean inputDropped;
    private volatile @Nullable Port port;
    private @Nullable Thread asker;
    private long retryMillis = FIRST_RETRY_MILLIS;
    private boolean thiefSaid;

    private Bus(SerialPlace place, boolean shareable, Port port, Ticker ticker) {
        this.place = place;
        this.shareable = shareable;
        this.port = port;
        this.ticker = ticker;
        this.threads = place.threads();
        this.exchange = new Exchange(place.line());
        this.thread = threads.newThread(() -> run(port));
        this.thread.setName("link-" + place.name());
    }

    /**
     * Opens the port; it is read from the first link on.
     *
     * @param shareable whether several links may join
     */
    static Bus open(SerialPlace place, boolean shareable, Ticker ticker) throws LinkException {
        return new Bus(place, shareable, place.open(), ticker);
    }

    /** Gives a port back that nobody joined. */
    void abandon() {
        closed = true;
        Port unused = port;
        if (unused != null) {
            Aside.run(unused::close, CLOSE_LIMIT, threads);
        }
    }

    SerialPlace place() {
        return place;
    }

    /** Ends all its links. */
    void close() {
        closed |= links.isEmpty();
        links.forEach(SerialLink::close);
    }

    boolean isShareable() {
        return shareable;
    }

    boolean isClosed() {
        return closed;
    }

    /** Whether it is the open port at a node now. */
    boolean isAt(Path node) {
        Port now = port;
        return !closed && now != null && now.node().equals(node);
    }

    /**
     * Adds a link.
     *
     * @throws IllegalArgumentException where its profile cannot be used on such a line
     */
    SerialLink join(Profile profile, int unit, LinkListener listener) throws LinkException {
        delivery.lock();
        try {
            if (closed) {
                throw new LinkException(place.path() + " was being closed: try again");
            }
            SerialLink link = new SerialLink(this, listener);
            long nanos = ticker.nanos();
            link.number(exchange.add(profile, unit, nanos, link));
            Port now = port;
            links.add(link);
            if (thread.getState() == Thread.State.NEW) {
                thread.start();
            }
            if (asker == null && exchange.asks()) {
                asker = threads.newThread(this::ask);
                asker.setName("link-ask-" + place.name());
                asker.start();
            }
            if (now != null) {
                link.changed(nanos, LinkChange.UP, place.upWords(now));
            }
            changed.signalAll();
            return link;
        } finally {
            delivery.unlock();
        }
    }

    void act(int number, String actionId) {
        delivery.lock();
        try {
            exchange.act(number, actionId);
            changed.signalAll();
        } finally {
            delivery.unlock();
        }
    }

    void send(byte[] bytes) throws LinkException {
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
                writeFailed = port == now;
                throw new LinkException(place.path() + " is gone: plug it in again");
            }
        }
    }

    /** Takes a link off, and closes the port behind the last one. */
    void leave(SerialLink link) {
        boolean held = lockShortly();
        try {
            link.silence();
            links.remove(link);
            closed |= links.isEmpty();
            if (held) {
                exchange.remove(link.number());
                changed.signalAll();
            }
        } finally {
            if (held) {
                delivery.unlock();
            }
        }
        if (!closed || Thread.currentThread() == thread || Aside.ended(thread, THREAD_LIMIT)) {
            return;
        }
        Port stuck = port;
        if (stuck != null) {
            Aside.run(stuck::close, CLOSE_LIMIT, threads);
        }
    }

    /** A listener that hangs in a delivery is waited for shortly. */
    private boolean lockShortly() {
        try {
            return delivery.tryLock(LISTENER_LIMIT_MILLIS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private void run(Port first) {
        Port current = first;
        try {
            while (!closed) {
                long sinceNanos = ticker.nanos();
                pump(current);
                long upNanos = ticker.nanos() - sinceNanos;
                retryMillis = upNanos > STEADY_NANOS ? FIRST_RETRY_MILLIS : retryMillis;
                say(LinkChange.LOST, lostWords(upNanos < SOON_NANOS));
                discard(current);
                current = reopen(current);
            }
        } finally {
            discard(current);
        }
    }

    /** Who may have taken the device is said once. */
    private String lostWords(boolean soon) {
        String words = place.lostWords(soon && !thiefSaid);
        thiefSaid |= soon;
        return words;
    }

    /** Reads until the device is gone or the bus is closed. */
    private void pump(Port current) {
        int failed = 0;
        int quiet = 0;
        while (!closed
                && !writeFailed
                && failed < FAILED_READS
                && !current.tty().disconnected()) {
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
                say(LinkChange.OVERRUN, place.path() + " took no bytes; what waited in the port was dropped");
            }
        }
    }

    /** Tries until the device is back or the bus is closed; a node that gives nothing but errors is not back. */
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
            say(LinkChange.BACK, place.backWords(again));
            restart(again);
            arrived(count);
            return again;
        }
        return gone;
    }

    private void restart(Port again) {
        delivery.lock();
        try {
            port = again;
            exchange.restart(ticker.nanos());
            changed.signalAll();
        } finally {
            delivery.unlock();
        }
    }

    private @Nullable Port tryOpen() {
        try {
            return place.open();
        } catch (LinkException e) {
            // Not there yet, or there and not yet ours: the rules that give it to us run a moment after it appears.
            return null;
        }
    }

    /** Returns false as soon as the bus is closed. */
    private boolean pause(long millis) {
        delivery.lock();
        try {
            long left = TimeUnit.MILLISECONDS.toNanos(millis);
            while (!closed && left > 0) {
                left = changed.awaitNanos(left);
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
            delivery.lock();
            try {
                exchange.received(ticker.nanos(), buffer, 0, count);
                changed.signalAll();
            } finally {
                delivery.unlock();
            }
        }
    }

    private void say(LinkChange change, String words) {
        delivery.lock();
        try {
            long nanos = ticker.nanos();
            links.forEach(l -> l.changed(nanos, change, words));
        } finally {
            delivery.unlock();
        }
    }

    /** Writes what is due and sleeps until the next thing is, or until something arrives. */
    private void ask() {
        while (!closed) {
            byte[] due = nextDue();
            if (due.length > 0) {
                write(due);
            }
        }
    }

    private byte[] nextDue() {
        delivery.lock();
        try {
            if (closed) {
                return new byte[0];
            }
            long nanos = ticker.nanos();
            // Nothing is asked while the device is away; what it is asked then begins anew.
            Outcome outcome = port == null ? new Outcome(new byte[0], Long.MAX_VALUE) : exchange.advance(nanos);
            if (outcome.write().length == 0) {
                long left = outcome.untilNanos() - nanos;
                changed.awaitNanos(Math.min(LONGEST_WAIT_NANOS, left));
            }
            return outcome.write();
        } catch (InterruptedException e) {
            // Nobody else knows this thread; a close sets the flag besides.
            return new byte[0];
        } finally {
            delivery.unlock();
        }
    }

    private void write(byte[] bytes) {
        try {
            send(bytes);
        } catch (LinkException e) {
            // The reader sees it too and says it; the question goes unanswered until then.
            return;
        }
    }
}
