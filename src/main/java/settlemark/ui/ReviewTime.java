package settlemark.ui;

import java.util.List;
import settlemark.session.Span;

/**
 * The line of a review, the stretch of time around it, and how both move: by hand, by the wheel, and by themselves while the
 * session plays. Times are nanoseconds of the session; the line never leaves it, and the stretch never reaches over its ends.
 */
final class ReviewTime {
    static final List<Integer> PACES = List.of(1, 2, 5, 10, 20, 50, 100);

    /** Least stretch that is shown: single samples of a fast probe. */
    static final long LEAST_NANOS = 50_000_000L;

    /** Where the line stands in the stretch after it has run out of it. */
    private static final double LEAD = 0.1;

    /** Most halvings or doublings that one turn of the wheel makes. */
    private static final int MOST_STEPS = 3;

    private final Shown shown;
    private Span whole = new Span(0, 1);
    private long lineNanos;
    private boolean playing;
    private int pace = 10;

    /** What shows a stretch of time. */
    interface Shown {
        Span view();

        void view(Span wanted);
    }

    ReviewTime(Shown shown) {
        this.shown = shown;
    }

    /** The line stands at the beginning of another session. */
    void begin(Span newWhole) {
        whole = newWhole;
        lineNanos = 0;
    }

    /** More of the session is known, or less. */
    void whole(Span newWhole) {
        whole = newWhole;
    }

    long lineNanos() {
        return lineNanos;
    }

    boolean playing() {
        return playing;
    }

    /** How many times faster than it was. */
    int pace() {
        return pace;
    }

    void pace(int newPace) {
        pace = newPace;
    }

    void nextPace() {
        pace = PACES.get((PACES.indexOf(pace) + 1) % PACES.size());
    }

    /** Plays or stops; at the end there is nothing to be played. */
    void playOrStop() {
        playing(!playing);
    }

    void playing(boolean wanted) {
        playing = wanted && lineNanos < whole.toNanos();
    }

    /** Moves the line as far as it plays in some time; stops it at the end. */
    void play(long passedNanos) {
        if (!playing) {
            return;
        }
        long next = Math.min(whole.toNanos(), lineNanos + passedNanos * pace);
        playing = next < whole.toNanos();
        lineNanos = next;
        if (!inView()) {
            show(next - Math.round(LEAD * length()), length());
        }
    }

    /** Puts the line somewhere; the stretch follows where it would leave it. */
    void line(long timeNanos) {
        lineNanos = Math.max(whole.fromNanos(), Math.min(whole.toNanos(), timeNanos));
        if (!inView()) {
            show(lineNanos - length() / 2, length());
        }
    }

    /** Moves the line by a part of what is shown. */
    void by(double part) {
        line(lineNanos + Math.round(part * length()));
    }

    void first() {
        line(whole.fromNanos());
    }

    void last() {
        line(whole.toNanos());
    }

    /**
     * Shows more or less time.
     *
     * @param steps doublings, negative for halvings
     * @param aroundNanos stays where it is on the screen
     */
    void zoom(int steps, long aroundNanos) {
        double factor = Math.pow(2, Math.max(-MOST_STEPS, Math.min(MOST_STEPS, steps)));
        double before = (aroundNanos - shown.view().fromNanos()) * factor;
        show(aroundNanos - Math.round(before), Math.round(length() * factor));
    }

    void zoom(int steps) {
        zoom(steps, lineNanos);
    }

    void all() {
        shown.view(whole);
    }

    /** Shows a step, with the line at its reading where it has one. */
    void step(Span span, long readNanos) {
        shown.view(span);
        lineNanos = readNanos;
    }

    /** Shows a gap with as much on both sides of it, the line at its beginning. */
    void gap(Span gap) {
        long length = gap.toNanos() - gap.fromNanos();
        lineNanos = gap.fromNanos();
        show(lineNanos - 2 * length, 5 * length);
    }

    private long length() {
        return shown.view().toNanos() - shown.view().fromNanos();
    }

    private boolean inView() {
        Span view = shown.view();
        return lineNanos >= view.fromNanos() && lineNanos <= view.toNanos();
    }

    /** Shows a stretch of this length within the session. */
    private void show(long fromNanos, long lengthNanos) {
        long end = whole.toNanos();
        long length = Math.min(end, Math.max(LEAST_NANOS, lengthNanos));
        long from = Math.max(0, Math.min(end - length, fromNanos));
        shown.view(new Span(from, from + length));
    }
}
