package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.EventQueue;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class EdtWatchTest {
    @Test
    void aStallIsReportedWhenItIsNoticedAndWhenItIsOver() throws Exception {
        CountDownLatch noticed = new CountDownLatch(1);
        List<String> lines = new CopyOnWriteArrayList<>();
        EdtWatch watch = new EdtWatch(line -> {
            lines.add(line);
            noticed.countDown();
        });
        EventQueue.invokeLater(() -> {
            try {
                noticed.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        watch.ask();
        assertThat(lines).hasSize(2);
        assertThat(lines.get(0)).startsWith("the window has not answered for 500 ms");
        assertThat(lines.get(1)).matches("the window answered again after \\d+\\.\\d s");
    }

    @Test
    void anAnswerInTimeIsNotReported() throws Exception {
        List<String> lines = new CopyOnWriteArrayList<>();
        EventQueue.invokeAndWait(() -> {});
        new EdtWatch(lines::add).ask();
        assertThat(lines).isEmpty();
    }
}
