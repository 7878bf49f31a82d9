package settlemark.ui;

import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;

/**
 * Watches the event thread: asks it for a sign of life and reports each stall, once when it is noticed and once when it
 * is over. Run it on a daemon thread of its own; it ends when that thread is interrupted.
 */
public final class EdtWatch implements Runnable {
    /** A person notices it from here on. */
    public static final Duration LIMIT = Duration.ofMillis(500);

    private static final Duration PAUSE = Duration.ofMillis(250);
    private final Consumer<String> report;

    /** @param report gets one line a stall, called from the watching thread */
    public EdtWatch(Consumer<String> report) {
        this.report = report;
    }

    @Override
    public void run() {
        CountDownLatch never = new CountDownLatch(1);
        try {
            do {
                ask();
            } while (!never.await(PAUSE.toMillis(), TimeUnit.MILLISECONDS));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Asks once and waits for the answer, however long it takes. */
    void ask() throws InterruptedException {
        CountDownLatch answered = new CountDownLatch(1);
        long asked = System.nanoTime();
        SwingUtilities.invokeLater(answered::countDown);
        if (answered.await(LIMIT.toMillis(), TimeUnit.MILLISECONDS)) {
            return;
        }
        report.accept("the window has not answered for " + LIMIT.toMillis() + " ms: " + whatItDoes());
        answered.await();
        double seconds = (System.nanoTime() - asked) / 1e9;
        report.accept(String.format(Locale.ROOT, "the window answered again after %.1f s", seconds));
    }

    /** The top of the event thread's stack, which names the culprit. */
    private static String whatItDoes() {
        return Thread.getAllStackTraces().entrySet().stream()
                .filter(e -> e.getKey().getName().startsWith("AWT-EventQueue"))
                .flatMap(e -> java.util.Arrays.stream(e.getValue()).limit(1))
                .map(StackTraceElement::toString)
                .findFirst()
                .orElse("its thread is not running");
    }
}
