package settlemark.app;

import java.time.Instant;
import java.util.List;
import settlemark.session.Ticker;
import settlemark.ui.DemoSpeed;

/** Time of the demo in its window: real time, or a multiple of it. */
final class DemoTicker implements Ticker, DemoSpeed {
    private static final List<Integer> CHOICES = List.of(1, 4, 10, 30);

    private final Instant start;
    private long realNanos = System.nanoTime();
    private long demoNanos;
    private int speed;

    /**
     * @param start wall clock of the session's start
     * @param fromNanos session time now
     */
    DemoTicker(Instant start, long fromNanos, int speed) {
        this.start = start;
        this.demoNanos = fromNanos;
        this.speed = CHOICES.contains(speed) ? speed : 1;
    }

    @Override
    public synchronized long nanos() {
        long real = System.nanoTime();
        demoNanos += (real - realNanos) * speed;
        realNanos = real;
        return demoNanos;
    }

    @Override
    public Instant wall() {
        return start.plusNanos(nanos());
    }

    @Override
    public List<Integer> choices() {
        return CHOICES;
    }

    @Override
    public synchronized int speed() {
        return speed;
    }

    @Override
    public synchronized void speed(int chosen) {
        nanos();
        speed = chosen;
    }
}
