package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static settlemark.link.Fixtures.PROFILE;
import static settlemark.link.Fixtures.THREADS;
import static settlemark.link.Fixtures.serial;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeLink;

/** Over real pseudo terminals. */
@SuppressWarnings("try") // a link is there to be listened to
final class SerialHostTest {
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    @TempDir
    private Path folder;

    private final SerialHost host = new SerialHost(THREADS);
    private final Heard heard = new Heard();
    private SocatPair pair;

    @BeforeEach
    void plugIn() throws IOException {
        pair = SocatPair.start(folder);
    }

    @AfterEach
    void pull() {
        pair.close();
    }

    @Test
    void everyByteArrivesInOrderForFiveSecondsAtFullRate() throws Exception {
        long seed = 20260314;
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        MessageDigest sent = MessageDigest.getInstance("SHA-256");
        Digesting digesting = new Digesting();
        long count = 0;
        try (ProbeLink link = host.open(serial(pair.near()), PROFILE, Fixtures.ticker(), digesting);
                SerialFarEnd far = SerialFarEnd.open(pair.far(), THREADS, PATIENCE)) {
            Await.until("up", 2000, () -> digesting.up);
            long end = System.nanoTime() + 5_000_000_000L;
            while (System.nanoTime() < end) {
                byte[] piece = new byte[1 + random.nextInt(3000)];
                random.nextBytes(piece);
                assertThat(far.write(piece)).isTrue();
                sent.update(piece);
                count += piece.length;
            }
            long total = count;
            Await.until("all bytes", 5000, () -> digesting.count.get() >= total);
        }
        System.out.println("bytes in 5 s: " + count);
        assertThat(count).isGreaterThan(1_000_000);
        assertThat(digesting.count.get()).isEqualTo(count);
        assertThat(digesting.digest.digest()).isEqualTo(sent.digest());
    }

    @Test
    void aHundredKilobytesSurviveTheRoundTripAndTheFarEndsClose() throws LinkException {
        byte[] bytes = new byte[100_000];
        new Random(7).nextBytes(bytes);
        try (ProbeLink link = open()) {
            try (SerialFarEnd far = SerialFarEnd.open(pair.far(), THREADS, PATIENCE)) {
                assertThat(far.write(bytes)).isTrue();
            }
            Await.until("all bytes", 5000, () -> heard.count() >= bytes.length);
        }
        assertThat(Arrays.equals(heard.bytes(), bytes)).isTrue();
    }

    @Test
    void whatIsSentArrivesAtTheOtherEnd() throws LinkException {
        byte[] question = "read\r\n".getBytes(StandardCharsets.US_ASCII);
        Heard other = new Heard();
        try (ProbeLink link = open();
                ProbeLink far = host.open(serial(pair.far()), PROFILE, Fixtures.ticker(), other)) {
            link.send(question);
            Await.until("the question", 2000, () -> other.count() == question.length);
        }
        assertThat(other.bytes()).isEqualTo(question);
    }

    @Test
    void anUnpluggedProbeIsLostWithinTwoSecondsAndBackWhenItReturns() throws Exception {
        try (ProbeLink link = open()) {
            far("before");
            Await.until("the first bytes", 2000, () -> heard.count() == 6);
            pair.unplug();
            long lostMillis = Await.until("lost", 2000, () -> heard.has(LinkChange.LOST));
            assertThatThrownBy(() -> link.send(new byte[] {1})).hasMessageContaining("not connected");
            pair.plugInAgain();
            long backMillis = Await.until("back", 4000, () -> heard.has(LinkChange.BACK));
            System.out.println("lost after " + lostMillis + " ms, back after " + backMillis + " ms");
            far("after");
            Await.until("the bytes after", 2000, () -> heard.count() == 11);
        }
        assertThat(new String(heard.bytes(), StandardCharsets.US_ASCII)).isEqualTo("beforeafter");
        assertThat(heard.changes()).containsExactly(LinkChange.UP, LinkChange.LOST, LinkChange.BACK);
    }

    @Test
    void anUnpluggedProbeMakesNoFloodWhileItIsAway() throws Exception {
        try (ProbeLink link = open()) {
            pair.unplug();
            Await.until("lost", 2000, () -> heard.has(LinkChange.LOST));
            String words = heard.lastWords();
            assertThat(words).contains(pair.near()).contains("come back");
        }
        assertThat(heard.changes()).containsExactly(LinkChange.UP, LinkChange.LOST);
    }

    @Test
    void aPortThatIsOpenCannotBeOpenedAgain() throws LinkException {
        try (ProbeLink link = open()) {
            assertThatThrownBy(this::open)
                    .isInstanceOf(LinkException.class)
                    .hasMessageContaining("is taken")
                    .hasMessageContaining("close");
        }
        open().close();
    }

    @Test
    void aPortThatAnotherProcessHoldsIsTakenAndTheProcessIsNamed() throws Exception {
        Process holder =
                new ProcessBuilder("flock", Path.of(pair.near()).toRealPath().toString(), "cat").start();
        try {
            Path node = Path.of(pair.near()).toRealPath();
            PortUsers users =
                    new PortUsers(Path.of("/proc"), ProcessHandle.current().pid());
            Await.until("the other process", 5000, () -> users.of(node).contains("cat"));
            assertThatThrownBy(this::open)
                    .isInstanceOf(LinkException.class)
                    .hasMessageContaining("is taken by")
                    .hasMessageContaining("flock (process " + holder.pid() + ")");
        } finally {
            holder.getOutputStream().close();
            holder.destroy();
        }
    }

    @Test
    void whatIsNoSerialPortIsRefusedWithTheRemedy() throws IOException {
        Path file = Files.writeString(folder.resolve("notes.txt"), "hello");
        Path dangling = Files.createSymbolicLink(folder.resolve("gone"), folder.resolve("nowhere"));
        assertThat(refusal("/dev/ttyUSB77")).contains("no device /dev/ttyUSB77").contains("plug");
        assertThat(refusal(file.toString())).contains("not a serial port").contains("/dev/ttyUSB0");
        assertThat(refusal(folder.toString())).contains("not a serial port");
        assertThat(refusal("/dev/null")).contains("not a serial port");
        assertThat(refusal(dangling.toString())).contains("gone").contains("plug it in again");
        assertThat(refusal("")).contains("not a serial port");
        assertThat(Files.readString(file)).isEqualTo("hello");
    }

    @Test
    void closingWhileReadingIsQuickAndSilentAndMayBeRepeated() throws LinkException {
        ProbeLink link = open();
        long start = System.nanoTime();
        link.close();
        link.close();
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(3));
        int before = heard.count();
        far("late");
        assertThat(heard.count()).isEqualTo(before);
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
        assertThatThrownBy(() -> link.send(new byte[] {1})).isInstanceOf(LinkException.class);
    }

    @Test
    void closingWhileASendIsBlockedIsQuick() throws Exception {
        // Other tests of the same Java machine may have links of their own.
        List<Thread> before = threads("link-");
        ProbeLink link = open();
        Thread sender = THREADS.newThread(() -> sendUntilRefused(link));
        sender.start();
        // Nobody reads the far end, so that the terminals fill and the system's write blocks.
        Await.until("a blocked write", 10_000, () -> blockedInWrite());
        long start = System.nanoTime();
        link.close();
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(3));
        sender.join(5000);
        assertThat(sender.isAlive()).isFalse();
        Await.until("the threads' end", 5000, () -> before.containsAll(threads("link-")));
    }

    @Test
    void aFarEndWhoseBytesNobodyTakesDropsThemInTimeAndSpeaksAgainLater() throws Exception {
        Duration patience = Duration.ofMillis(200);
        byte[] piece = new byte[2000];
        try (SerialFarEnd far = SerialFarEnd.open(pair.far(), THREADS, patience)) {
            int taken = 0;
            while (far.write(piece)) {
                taken++;
                assertThat(taken).as("writes that nobody reads").isLessThan(1000);
            }
            long start = System.nanoTime();
            far.write(piece);
            assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
            try (ProbeLink link = open()) {
                Await.until("what was left", 2000, () -> heard.count() > 0 || far(far, "x"));
                Await.until("the line", 5000, () -> far(far, "!") && endsWith('!'));
            }
        }
    }

    @Test
    void aFarEndWhoseOtherSideIsGoneSaysSo() throws Exception {
        try (SerialFarEnd far = SerialFarEnd.open(pair.far(), THREADS, PATIENCE)) {
            pair.unplug();
            assertThatThrownBy(() -> far.write(new byte[10]))
                    .isInstanceOf(LinkException.class)
                    .hasMessageContaining(pair.far())
                    .hasMessageContaining("closed");
        }
        assertThatThrownBy(() -> SerialFarEnd.open(pair.far(), THREADS, PATIENCE))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("gone");
    }

    private ProbeLink open() throws LinkException {
        ProbeLink link = host.open(serial(pair.near()), PROFILE, Fixtures.ticker(), heard);
        Await.until("up", 2000, () -> heard.has(LinkChange.UP));
        return link;
    }

    private String refusal(String path) {
        try {
            host.open(serial(path), PROFILE, Fixtures.ticker(), heard).close();
            return "";
        } catch (LinkException e) {
            return String.valueOf(e.getMessage());
        }
    }

    private void far(String text) throws LinkException {
        try (SerialFarEnd far = SerialFarEnd.open(pair.far(), THREADS, PATIENCE)) {
            far.write(text.getBytes(StandardCharsets.US_ASCII));
        }
    }

    private static boolean far(SerialFarEnd far, String text) {
        try {
            return far.write(text.getBytes(StandardCharsets.US_ASCII));
        } catch (LinkException e) {
            throw new AssertionError(e);
        }
    }

    private boolean endsWith(char last) {
        byte[] bytes = heard.bytes();
        return bytes.length > 0 && bytes[bytes.length - 1] == last;
    }

    private static void sendUntilRefused(ProbeLink link) {
        try {
            while (true) {
                link.send(new byte[1024]);
            }
        } catch (LinkException e) {
            return;
        }
    }

    private static boolean blockedInWrite() {
        return threads("link-out-").stream()
                .anyMatch(t -> Arrays.stream(t.getStackTrace())
                        .anyMatch(f -> f.getMethodName().equals("writeBytes")));
    }

    private static List<Thread> threads(String prefix) {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(t -> t.isAlive() && t.getName().startsWith(prefix))
                .toList();
    }

    /** Keeps the digest of all bytes instead of the bytes. */
    private static final class Digesting implements LinkListener {
        private final MessageDigest digest = MessageDigest.getInstance("SHA-256");
        private final AtomicLong count = new AtomicLong();
        private volatile boolean up;

        Digesting() throws NoSuchAlgorithmException {}

        @Override
        public void arrived(Chunk chunk) {
            digest.update(chunk.bytes());
            count.addAndGet(chunk.bytes().length);
        }

        @Override
        public void changed(long timeNanos, LinkChange change, String words) {
            up = true;
        }
    }
}
