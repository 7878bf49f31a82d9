package settlemark.link;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.profile.Action;
import settlemark.profile.Profile;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/**
 * A Bluetooth probe and the thread that sets its link up, keeps it up and delivers what it says. A lost link is set up
 * again for as long as it is open.
 */
final class BleLink implements ProbeLink {
    private static final Duration CLOSE_LIMIT = Duration.ofMillis(2500);
    private static final long STEADY_NANOS = 5_000_000_000L;

    private final String probe;
    private final String address;
    private final Profile profile;
    private final BleSettings settings;
    private final Ticker ticker;
    private final BleVoice voice;
    private final BleInbox inbox;
    private final Random jitter;
    private final CompletableFuture<String> opened = new CompletableFuture<>();
    private final Thread thread;
    private final Optional<String> adapter;
    private final boolean connected;
    private Runnable onEnd = () -> {};
    private @Nullable BleCourse course;

    private boolean up;
    private boolean down;
    private volatile String lastWords = "";
    private long retryNanos;

    /**
     * @param place what is opened
     * @param connected whether it holds a connection, or only listens
     */
    BleLink(BlePlace place, boolean connected, Ticker ticker, LinkListener listener) {
        this.probe = place.words();
        this.address = place.address();
        this.profile = place.profile();
        this.settings = place.central().settings();
        this.ticker = ticker;
        this.voice = new BleVoice(listener);
        this.inbox = new BleInbox(ticker, settings.inboxChunks());
        this.jitter = new Random(place.address().hashCode());
        this.adapter = place.adapter();
        this.connected = connected;
        this.thread = place.central().threads().newThread(this::run);
        this.thread.setName("link-" + place.address());
    }

    BleInbox inbox() {
        return inbox;
    }

    /** @param call run once, after the end */
    void onEnd(Runnable call) {
        onEnd = call;
    }

    /** Whether both hold a connection of the same adapter. */
    boolean sharesTurnsWith(BleLink other) {
        return connected && other.connected && adapter.equals(other.adapter);
    }

    boolean isClosed() {
        return voice.isSilent();
    }

    /** Starts on a course and waits until the probe is there. */
    void start(BleCourse on) throws LinkException {
        course = on;
        thread.start();
        try {
            String words = opened.get(settings.open().toMillis(), TimeUnit.MILLISECONDS);
            if (!words.isEmpty()) {
                close();
                throw new LinkException(words);
            }
        } catch (TimeoutException e) {
            String words = lastWords;
            close();
            throw new LinkException(words.isEmpty() ? BleWords.notHeard(probe) : words, e);
        } catch (ExecutionException e) {
            close();
            throw new IllegalStateException("the link's thread ended by a fault of the program", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            close();
            throw new LinkException("opening " + probe + " was broken off", e);
        }
    }

    @Override
    public void send(byte[] bytes) throws LinkException {
        throw new LinkException(probe + " takes no bytes but what its profile's actions write: choose an action");
    }

    @Override
    public void act(String actionId) throws LinkException {
        BleCourse on = course;
        for (Action action : profile.actions()) {
            if (action.id().equals(actionId) && on != null) {
                on.perform(action.steps());
                return;
            }
        }
        throw new LinkException("profile \"" + profile.id() + "\" has no action \"" + actionId + "\"; it has "
                + profile.actions().stream().map(Action::id).toList());
    }

    @Override
    public String identity() {
        return address;
    }

    @Override
    public void close() {
        voice.silence();
        inbox.wake();
        if (Thread.currentThread() != thread) {
            Aside.ended(thread, CLOSE_LIMIT);
        }
    }

    /** Closing returns before a slow service has taken the connection down; whoever opens anew waits for that. */
    void awaitEnd(Duration limit) {
        Aside.ended(thread, limit);
    }

    /** Something about the connection changed: the thread looks at once. */
    void wake() {
        inbox.wake();
    }

    /** What is so while the link is not up; told once while it is down. */
    void note(String words) {
        boolean fresh = !words.equals(lastWords);
        lastWords = words;
        if (up && (!down || fresh)) {
            down = true;
            voice.changed(ticker.nanos(), LinkChange.LOST, words);
        }
    }

    private void run() {
        BleCourse on = java.util.Objects.requireNonNull(course);
        retryNanos = settings.firstRetry().toNanos();
        try {
            while (!voice.isSilent()) {
                attempt(on);
            }
        } catch (RuntimeException | Error e) {
            opened.completeExceptionally(e);
            voice.changed(ticker.nanos(), LinkChange.ENDED, "a fault of the program ended the link: " + e);
            throw e;
        } finally {
            on.end();
            voice.silence();
            onEnd.run();
        }
    }

    private void attempt(BleCourse on) {
        long begunNanos = System.nanoTime();
        try {
            established(on, on.begin());
            begunNanos = System.nanoTime();
            while (!voice.isSilent()) {
                long due = on.tend();
                deliver(on, inbox.take(due));
            }
        } catch (BleFault fault) {
            deliver(on, inbox.take(0));
            lost(on, fault, System.nanoTime() - begunNanos);
        }
    }

    private void established(BleCourse on, String words) {
        lastWords = "";
        if (!up) {
            up = true;
            voice.changed(inbox.sinceNanos(), LinkChange.UP, words);
            opened.complete("");
        } else if (down && !on.speaksByItself()) {
            back(inbox.sinceNanos(), words);
        }
    }

    private void back(long nanos, String words) {
        down = false;
        lastWords = "";
        voice.changed(nanos, LinkChange.BACK, words);
    }

    private void deliver(BleCourse on, List<Chunk> chunks) {
        for (Chunk chunk : chunks) {
            if (down) {
                back(chunk.timeNanos(), probe + " is heard again");
            }
            on.arrived(chunk.input());
            voice.arrived(chunk);
        }
        long dropped = inbox.takeDropped();
        if (dropped > 0) {
            voice.changed(
                    ticker.nanos(),
                    LinkChange.OVERRUN,
                    dropped + " values of " + probe + " came faster than they could be taken");
        }
    }

    private void lost(BleCourse on, BleFault fault, long upNanos) {
        if (!up && fault.isLasting()) {
            opened.complete(fault.words());
        }
        note(fault.words());
        on.end();
        if (upNanos > STEADY_NANOS) {
            retryNanos = settings.firstRetry().toNanos();
        }
        // A tenth either way, so that probes that were lost together do not come back in step.
        voice.pause((long) (retryNanos * (0.9 + 0.2 * jitter.nextDouble())));
        retryNanos = Math.min(2 * retryNanos, settings.lastRetry().toNanos());
    }

    /** Lets what belongs to a loss come in before it is put in words. */
    void settle() {
        voice.pause(settings.settle().toNanos());
    }
}
