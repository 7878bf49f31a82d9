package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.measure.Chunk;
import settlemark.session.CaptureHeader;
import settlemark.session.CaptureProblem;
import settlemark.session.LinkChange;
import settlemark.session.SessionEvent;

final class CaptureTest {
    private static final CaptureHeader HEADER = new CaptureHeader(
            Optional.of(ZonedDateTime.parse("2026-03-02T09:15:00.123456789+01:00[Europe/Berlin]")),
            List.of(
                    new CaptureHeader.Probe("gauge", "demo-gauge", "0a".repeat(32), "serial:/dev/serial/by-id/a b"),
                    new CaptureHeader.Probe("air.2", "", "", "")));

    private static final String HEAD = "settlemark-capture 1\nprobe gauge\nprobe air\n";

    @TempDir
    private Path folder = Path.of("");

    private String written(List<SessionEvent> events) throws IOException {
        Path file = folder.resolve("a.capture");
        Files.deleteIfExists(file);
        try (CaptureWriter writer = CaptureWriter.create(file, HEADER, List.of("SIMULATED:\ngauge"))) {
            for (SessionEvent event : events) {
                writer.write(event);
            }
            writer.end(20_000_000_000L);
        }
        return Files.readString(file);
    }

    private static SessionEvent bytes(int probe, long nanos, int input, int... bytes) {
        byte[] array = new byte[bytes.length];
        for (int i = 0; i < array.length; i++) {
            array[i] = (byte) bytes[i];
        }
        return new SessionEvent.Bytes(probe, new Chunk(nanos, input, array));
    }

    @Test
    void isTextThatAPersonCanRead() throws IOException {
        String text = written(List.of(
                new SessionEvent.Link(0, 12_345_678, LinkChange.UP, "listening on \n/dev/ttyUSB0"),
                bytes(0, 104_300_000, 0, 0x50, 0x31, 0xFF),
                bytes(1, 1_000_000_001, Chunk.STRAY, 0)));
        assertThat(text.lines().filter(line -> !line.startsWith("#")))
                .containsExactly(
                        "settlemark-capture 1",
                        "start 2026-03-02T09:15:00.123456789+01:00[Europe/Berlin]",
                        "probe gauge demo-gauge sha256:" + "0a".repeat(32) + " serial:/dev/serial/by-id/a b",
                        "probe air.2 - -",
                        "0.012345678 gauge up listening on  /dev/ttyUSB0",
                        "0.104300000 gauge 0 50 31 FF",
                        "1.000000001 air.2 stray 00",
                        "end 20.000000000");
        assertThat(text).contains("\n# SIMULATED: gauge\n");
    }

    @Test
    void whatIsReadIsWhatWasWritten() throws IOException {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        List<SessionEvent> events = new ArrayList<>();
        long nanos = 0;
        for (int i = 0; i < 500; i++) {
            nanos += random.nextInt(200_000_000);
            byte[] bytes = new byte[1 + random.nextInt(300)];
            random.nextBytes(bytes);
            int probe = random.nextInt(2);
            events.add(
                    random.nextInt(10) == 0
                            ? new SessionEvent.Link(
                                    probe,
                                    nanos,
                                    LinkChange.values()[random.nextInt(5)],
                                    i % 3 == 0 ? "" : "words # " + i)
                            : new SessionEvent.Bytes(probe, new Chunk(nanos, random.nextInt(4) - 1, bytes)));
        }
        HeardCapture heard = HeardCapture.of(written(events));
        assertThat(heard.headers).as("seed %d", seed).containsExactly(HEADER);
        assertThat(heard.events).as("seed %d", seed).isEqualTo(events);
        assertThat(heard.problems).isEmpty();
        assertThat(heard.reading.whole()).isTrue();
        assertThat(heard.reading.events()).isEqualTo(500);
    }

    @Test
    void aChunkOfAnyLengthIsWrittenInLinesThatCanBeRead() throws IOException {
        byte[] large = new byte[200_000];
        new Random(7).nextBytes(large);
        HeardCapture heard = HeardCapture.of(written(List.of(new SessionEvent.Bytes(0, new Chunk(5, large)))));
        assertThat(heard.problems).isEmpty();
        int at = 0;
        for (SessionEvent event : heard.events) {
            byte[] part = ((SessionEvent.Bytes) event).chunk().bytes();
            assertThat(event.timeNanos()).isEqualTo(5);
            assertThat(part).isEqualTo(Arrays.copyOfRange(large, at, at + part.length));
            at += part.length;
        }
        assertThat(at).isEqualTo(large.length);
    }

    @Test
    void noCaptureIsOverwritten() throws IOException {
        Path file = Files.writeString(folder.resolve("kept"), "mine");
        assertThatThrownBy(() -> CaptureWriter.create(file, HEADER, List.of()))
                .isInstanceOf(FileAlreadyExistsException.class);
        assertThat(file).hasContent("mine");
    }

    @Test
    void whatWasFlushedIsInTheFileBeforeTheEnd() throws IOException {
        Path file = folder.resolve("live");
        try (CaptureWriter writer = CaptureWriter.create(file, HEADER, List.of())) {
            writer.write(bytes(0, 1, 0, 0x41));
            writer.flush();
            HeardCapture heard = HeardCapture.of(Files.readAllBytes(file));
            assertThat(heard.events).containsExactly(bytes(0, 1, 0, 0x41));
            assertThat(heard.reading.whole()).isFalse();
            assertThat(heard.said()).singleElement().asString().contains("warning: no end line");
        }
    }

    /** A killed process may leave any number of bytes. */
    @Test
    void cutAnywhereTheRestIsReadAndOnlyTheCutLineIsLeftOut() throws IOException {
        List<SessionEvent> events = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            events.add(bytes(i % 2, i * 1_000_000_007L, 0, 0x50 + i, i, 0xA0));
        }
        byte[] whole = written(events).getBytes(StandardCharsets.UTF_8);
        for (int length = "settlemark-capture 1".length(); length < whole.length; length++) {
            String text = new String(whole, 0, length, StandardCharsets.UTF_8);
            long lines = text.lines().count() - (text.endsWith("\n") ? 0 : 1);
            long complete = text.lines()
                    .limit(lines)
                    .filter(line -> Character.isDigit(line.charAt(0)))
                    .count();
            HeardCapture heard = HeardCapture.of(text);
            assertThat(heard.events).as("cut at %d", length).isEqualTo(events.subList(0, (int) complete));
            assertThat(heard.reading.damaged()).as("cut at %d", length).isFalse();
            boolean ends =
                    text.substring(text.lastIndexOf('\n', length - 2) + 1).startsWith("end");
            assertThat(heard.problems).as("cut at %d", length).hasSize(ends ? 0 : 1);
            assertThat(heard.problems).noneMatch(CaptureProblem::damage);
        }
    }

    @Test
    void anEditedFileIsReadToo() {
        HeardCapture heard = HeardCapture.of("\uFEFFsettlemark-capture 1\r\n\r\n  # mine\r\nprobe gauge plain-line\r\n"
                + "\t0 gauge 0 31320d0A # twelve\r\n2.5  gauge  0  31 320A\r\nend\r\n");
        assertThat(heard.problems).isEmpty();
        assertThat(heard.events)
                .containsExactly(bytes(0, 0, 0, 0x31, 0x32, 0x0D, 0x0A), bytes(0, 2_500_000_000L, 0, 0x31, 0x32, 0x0A));
        assertThat(heard.headers)
                .singleElement()
                .satisfies(header -> assertThat(header.probes())
                        .containsExactly(new CaptureHeader.Probe("gauge", "plain-line", "", "")));
    }

    @Test
    void damageIsToldWithLineAndColumnAndTheRestIsRead() {
        assertDamage("1.0 gauge 0 50 3\n", "4:16: a byte is two hexadecimal digits such as 0A, got \"3\"");
        assertDamage("1.0 gauge 0 50 3x\n", "4:16: a byte is two hexadecimal digits such as 0A, got \"3x\"");
        assertDamage("1.0 gauge 0 5 0\n", "4:13: a byte is two hexadecimal digits such as 0A, got \"5 \"");
        assertDamage("1.0 gauge 0\n", "4:12: no bytes: write them in hexadecimal, such as 0D 0A");
        assertDamage("1.0 gauge 1000 41\n", "4:11: behind the probe stands an input from 0 to 999");
        assertDamage("1.0 gauge\n", "4:10: behind the probe stands an input from 0 to 999");
        assertDamage("1.0 gouge 0 41\n", "4:5: no probe \"gouge\": the probes are gauge, air");
        assertDamage("1,0 gauge 0 41\n", "4:1: a line begins with a time in seconds, start, probe or end, got \"1,0\"");
        assertDamage("-1 gauge 0 41\n", "4:1: a line begins with a time");
        assertDamage("1.0123456789 gauge 0 41\n", "4:1: a line begins with a time");
        assertDamage("9999999999 gauge 0 41\n", "4:1: a line begins with a time");
        assertDamage("start yesterday\n", "4:7: start must be a time such as 2026-03-02T09:15:00+01:00");
        assertDamage("probe gauge\n", "4:7: there is a probe gauge already");
        assertDamage("probe g/auge\n", "4:7: a probe's name is 1 to 40 letters");
        assertDamage(
                "\u0000\u001B[2J\n", "4:1: a line begins with a time in seconds, start, probe or end, got \"  [2J\"");
        assertDamage(
                "1.0 gauge 0 " + "41".repeat(100_000) + "\n", "4:200001: the line is longer than 200000 characters");
    }

    private static void assertDamage(String line, String message) {
        HeardCapture heard = HeardCapture.of(HEAD + line + "2 air 0 42\nend 3\n");
        assertThat(heard.said()).as(line).singleElement().asString().startsWith(message);
        assertThat(heard.reading.damagedLines()).isEqualTo(1);
        assertThat(heard.events).as(line).contains(bytes(1, 2_000_000_000L, 0, 0x42));
    }

    @Test
    void aFileThatIsNoCaptureIsOneProblem() {
        for (String text :
                List.of("", "\n", "a,b\n1,2\n", "\u0000\u0000\u0000", "settlemark-capture", "probe gauge\n")) {
            HeardCapture heard = HeardCapture.of(text);
            assertThat(heard.problems).as(text).hasSize(1);
            assertThat(heard.reading.damaged()).as(text).isTrue();
            assertThat(heard.headers).as(text).isEmpty();
        }
        assertThat(HeardCapture.of("settlemark-capture 2\n").said())
                .containsExactly(
                        "1:20: a capture of version 1 is expected, got \"2\": read it with a newer version of the"
                                + " program");
    }

    @Test
    void noFrameIsPutTogetherAcrossADamagedLine() {
        HeardCapture known = HeardCapture.of(HEAD + "1 gauge 0 31\n1.5 gauge 0 3\n2 gauge 0 32 0A\nend\n");
        assertThat(known.events).hasSize(3);
        assertThat(known.events.get(1))
                .isEqualTo(
                        new SessionEvent.Link(0, 1_000_000_000L, LinkChange.LOST, "line 5 of the capture is damaged"));
        HeardCapture unknown = HeardCapture.of(HEAD + "1 gauge 0 31\n1.5 g\n2 gauge 0 32 0A\nend\n");
        assertThat(unknown.events)
                .filteredOn(SessionEvent.Link.class::isInstance)
                .extracting(event -> ((SessionEvent.Link) event).probe())
                .containsExactly(0, 1);
    }

    @Test
    void timeThatGoesBackIsToldAndTheLineReadAsItStands() {
        HeardCapture heard = HeardCapture.of(HEAD + "5 gauge 0 31\n4 air 0 31\n4.5 gauge 0 32\n4.75 gauge 0 33\nend\n");
        assertThat(heard.said())
                .containsExactly("6:1: time goes back, from 5.000000000 to 4.500000000; the line is read as it stands");
        assertThat(heard.events).hasSize(4).allMatch(SessionEvent.Bytes.class::isInstance);
    }

    @Test
    void nothingFollowsTheEnd() {
        HeardCapture heard = HeardCapture.of(HEAD + "1 gauge 0 31\nend 2\n# a remark\n3 gauge 0 32\n");
        assertThat(heard.said()).containsExactly("7:1: nothing may follow the end line; this line is left out");
        assertThat(heard.events)
                .filteredOn(SessionEvent.Bytes.class::isInstance)
                .hasSize(1);
    }

    @Test
    void whatStandsInTheHeadMayNotStandLater() {
        HeardCapture heard = HeardCapture.of(HEAD + "1 gauge 0 31\nprobe late\n2 gauge 0 32\nend\n");
        assertThat(heard.said())
                .containsExactly("5:1: start and probe stand before the first time; this line is left out");
    }

    @Test
    void manyProblemsAreCountedAndTheFirstHundredTold() {
        HeardCapture heard = HeardCapture.of(HEAD + "nonsense\n".repeat(5000) + "end\n");
        assertThat(heard.problems).hasSize(100);
        assertThat(heard.problems.get(99).message()).endsWith("(further problems are only counted)");
        assertThat(heard.reading.damagedLines()).isEqualTo(5000);
    }

    @Test
    void moreProbesThanAreTakenAreTold() {
        StringBuilder text = new StringBuilder("settlemark-capture 1\n");
        for (int i = 0; i < 66; i++) {
            text.append("probe p").append(i).append('\n');
        }
        HeardCapture heard = HeardCapture.of(text + "end\n");
        assertThat(heard.said()).hasSize(2).allMatch(said -> said.contains("a capture holds 64 probes at most"));
    }

    @Test
    void aBadDigestCostsTheDigestOnly() {
        HeardCapture heard =
                HeardCapture.of("settlemark-capture 1\nprobe gauge demo-gauge sha256:12 here\n1 gauge 0 31\nend\n");
        assertThat(heard.said())
                .containsExactly("2:24: a profile's digest is sha256: and 64 lower-case hexadecimal digits,"
                        + " got \"sha256:12\"");
        assertThat(heard.headers.get(0).probes())
                .containsExactly(new CaptureHeader.Probe("gauge", "demo-gauge", "", "here"));
        assertThat(heard.events).hasSize(1);
    }

    /** Mutilated captures are problems; memory and time stay small whatever they hold. */
    @Test
    void anyBytesAreReadWithoutAnException() throws IOException {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        byte[] good = written(List.of(bytes(0, 5, 0, 1, 2, 3), bytes(1, 9, 1, 4, 5), bytes(0, 12, 2, 6)))
                .getBytes(StandardCharsets.UTF_8);
        for (int round = 0; round < 20_000; round++) {
            byte[] bad = good.clone();
            for (int i = 1 + random.nextInt(6); i > 0; i--) {
                bad[random.nextInt(bad.length)] = (byte) (random.nextBoolean() ? random.nextInt(256) : '\n');
            }
            HeardCapture heard = HeardCapture.of(bad);
            long damage = heard.problems.stream().filter(CaptureProblem::damage).count();
            assertThat(damage).as("seed %d round %d", seed, round).isEqualTo(heard.reading.damagedLines());
        }
    }
}
