package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static settlemark.link.Fixtures.PROFILE;
import static settlemark.link.Fixtures.THREADS;
import static settlemark.link.Fixtures.serial;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.measure.Chunk;
import settlemark.profile.SerialLine;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeLink;

/** With devices that misbehave as real ones do when their plug is pulled. */
@SuppressWarnings("try") // a link is there to be listened to
final class SerialLinkTest {
    @TempDir
    private Path folder;

    private final Heard heard = new Heard();

    /** A device whose node is a link to one that every system has. */
    private final class FakeTty implements Tty, TtyOpener {
        private final AtomicInteger opened = new AtomicInteger();
        private final AtomicInteger failedReads = new AtomicInteger();
        private final CountDownLatch never = new CountDownLatch(1);
        private volatile boolean refuseReads;
        private volatile boolean saidGone;
        private volatile boolean refuseWrites;
        private volatile boolean hangWrites;
        private volatile boolean hangReads;
        private volatile boolean hangClose;
        private final Deque<byte[]> input = new ArrayDeque<>();

        @Override
        public Tty open(Path node, SerialLine line) {
            opened.incrementAndGet();
            return this;
        }

        synchronized void gives(byte[] bytes) {
            input.add(bytes);
            notifyAll();
        }

        @Override
        public int read(byte[] buffer) {
            if (hangReads) {
                hang();
            }
            if (refuseReads) {
                failedReads.incrementAndGet();
                return -1;
            }
            byte[] next = next();
            System.arraycopy(next, 0, buffer, 0, next.length);
            return next.length;
        }

        @Override
        public boolean disconnected() {
            return saidGone;
        }

        private synchronized byte[] next() {
            if (input.isEmpty()) {
                try {
                    wait(10);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }
            byte[] next = input.poll();
            return next == null ? new byte[0] : next;
        }

        @Override
        public int write(byte[] bytes, int offset, int length) {
            if (hangWrites) {
                hang();
            }
            return refuseWrites ? 0 : length;
        }

        @Override
        public int awaitingWrite() {
            return 0;
        }

        @Override
        public void release() {
            never.countDown();
        }

        @Override
        public void close() {
            if (hangClose) {
                hang();
            }
        }

        private void hang() {
            try {
                never.await(30, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private final FakeTty tty = new FakeTty();

    @Test
    void readsThatFailForEverAreOneLossAndFewTries() throws Exception {
        try (ProbeLink link = open(heard)) {
            tty.gives(new byte[] {1, 2, 3});
            Await.until("the bytes", 2000, () -> heard.count() == 3);
            tty.refuseReads = true;
            Await.until("several tries", 5000, () -> tty.opened.get() >= 4);
            assertThat(heard.changes()).containsExactly(LinkChange.UP, LinkChange.LOST);
            // three to see it, one a try since
            assertThat(tty.failedReads.get()).isLessThanOrEqualTo(3 + tty.opened.get());
            tty.refuseReads = false;
            Await.until("back", 3000, () -> heard.has(LinkChange.BACK));
            tty.gives(new byte[] {4});
            Await.until("the bytes after", 2000, () -> heard.count() == 4);
            assertThat(link).isNotNull();
        }
        assertThat(heard.bytes()).containsExactly(1, 2, 3, 4);
        assertThat(heard.timeWentBack()).isFalse();
    }

    @Test
    void aMissingNodeIsALossThoughReadsGoOnWithoutAnError() throws Exception {
        try (ProbeLink link = open(heard)) {
            assertThat(link).isNotNull();
            Files.delete(node());
            Await.until("lost", 2000, () -> heard.has(LinkChange.LOST));
            assertThat(heard.lastWords())
                    .contains("gone")
                    .contains("ModemManager")
                    .contains("brltty");
        }
    }

    @Test
    void aDeviceThatTheSystemSaysIsGoneIsALossThoughNothingElseShowsIt() throws Exception {
        try (ProbeLink link = open(heard)) {
            assertThat(link).isNotNull();
            tty.saidGone = true;
            Await.until("lost", 2000, () -> heard.has(LinkChange.LOST));
            tty.saidGone = false;
            Await.until("back", 3000, () -> heard.has(LinkChange.BACK));
        }
        assertThat(heard.changes()).containsExactly(LinkChange.UP, LinkChange.LOST, LinkChange.BACK);
    }

    @Test
    void whoMayHaveTakenADeviceIsSaidOnceAndOnlyWhereItWentWithinSeconds() throws Exception {
        try (ProbeLink link = open(heard)) {
            assertThat(link).isNotNull();
            for (int i = 0; i < 2; i++) {
                tty.saidGone = true;
                int losses = 1 + i;
                Await.until(
                        "lost",
                        2000,
                        () -> heard.changes().stream()
                                        .filter(c -> c == LinkChange.LOST)
                                        .count()
                                == losses);
                assertThat(heard.lastWords().contains("ModemManager")).isEqualTo(i == 0);
                tty.saidGone = false;
                Await.until(
                        "back",
                        3000,
                        () -> heard.changes().stream()
                                        .filter(c -> c == LinkChange.BACK)
                                        .count()
                                == losses);
            }
        }
        SerialPlace place = new SerialPlace(
                "/dev/ttyUSB0",
                "",
                "",
                LineSettings.DEFAULT,
                new DeviceNodes(folder),
                new Identities(folder, new DeviceNodes(folder)),
                tty,
                THREADS);
        assertThat(place.lostWords(false)).doesNotContain("ModemManager");
    }

    @Test
    void aWriteThatFailsIsALoss() throws Exception {
        try (ProbeLink link = open(heard)) {
            tty.refuseWrites = true;
            assertThatThrownBy(() -> link.send(new byte[] {1})).hasMessageContaining("gone");
            Await.until("lost", 2000, () -> heard.has(LinkChange.LOST));
        }
    }

    @Test
    void aSendThatIsNotTakenIsGivenUpAndSaidOnce() throws Exception {
        try (ProbeLink link = open(heard)) {
            tty.hangWrites = true;
            assertThatThrownBy(() -> link.send(new byte[] {1}))
                    .isInstanceOf(LinkException.class)
                    .hasMessageContaining("did not take 1 bytes");
            Await.until("the dropped bytes said", 2000, () -> heard.has(LinkChange.OVERRUN));
            tty.hangWrites = false;
            link.send(new byte[] {2});
        }
        assertThat(heard.changes()).containsExactly(LinkChange.UP, LinkChange.OVERRUN);
    }

    @Test
    void aCloseThatNeverReturnsHoldsNobodyUp() throws Exception {
        ProbeLink link = open(heard);
        tty.hangClose = true;
        assertThat(millis(link::close)).isLessThan(3000);
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
        tty.never.countDown();
    }

    @Test
    void aReadAndACloseThatNeverReturnHoldNobodyUpAndDeliverNothingLater() throws Exception {
        tty.gives(new byte[] {1});
        ProbeLink link = open(heard);
        Await.until("the bytes", 2000, () -> heard.count() == 1);
        tty.hangReads = true;
        tty.hangClose = true;
        tty.gives(new byte[] {2});
        assertThat(millis(link::close)).isLessThan(3000);
        int count = heard.count();
        tty.never.countDown();
        Await.until(
                "the thread's end",
                5000,
                () -> Thread.getAllStackTraces().keySet().stream()
                        .noneMatch(t -> t.getName().equals("link-ttyUSB0")));
        assertThat(heard.count()).isEqualTo(count);
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void aDeadDeviceWhoseCloseHangsIsBackAllTheSame() throws Exception {
        try (ProbeLink link = open(heard)) {
            assertThat(link).isNotNull();
            tty.hangClose = true;
            tty.refuseReads = true;
            Await.until("lost", 2000, () -> heard.has(LinkChange.LOST));
            tty.refuseReads = false;
            Await.until("back", 5000, () -> heard.has(LinkChange.BACK));
            tty.hangClose = false;
            tty.never.countDown();
        }
    }

    @Test
    void aListenerMayCloseTheLinkThatCallsIt() throws Exception {
        AtomicReference<ProbeLink> self = new AtomicReference<>();
        CountDownLatch opened = new CountDownLatch(1);
        CountDownLatch closed = new CountDownLatch(1);
        self.set(open(new LinkListener() {
            @Override
            public void arrived(Chunk chunk) {
                try {
                    opened.await(5, TimeUnit.SECONDS);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
                Objects.requireNonNull(self.get()).close();
                closed.countDown();
            }

            @Override
            public void changed(long timeNanos, LinkChange change, String words) {}
        }));
        opened.countDown();
        tty.gives(new byte[] {1});
        assertThat(closed.await(3, TimeUnit.SECONDS)).isTrue();
    }

    private Path node() {
        return folder.resolve("ttyUSB0");
    }

    /** The node must be a device, which only the system can make; so it is a link, and the name that is looked for. */
    private ProbeLink open(LinkListener listener) throws Exception {
        Files.createSymbolicLink(node(), Path.of("/dev/null"));
        DeviceNodes nodes = new DeviceNodes(folder, real -> Files.exists(node()));
        ProbeLink link = new SerialHost(THREADS, nodes, folder.resolve("sys"), tty)
                .open(serial(node()), PROFILE, Fixtures.ticker(), listener);
        if (listener == heard) {
            Await.until("up", 2000, () -> heard.has(LinkChange.UP));
        }
        return link;
    }

    private static long millis(Runnable call) {
        long start = System.nanoTime();
        call.run();
        return Duration.ofNanos(System.nanoTime() - start).toMillis();
    }
}
