package settlemark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.link.CaptureReader;
import settlemark.session.CaptureHeader;
import settlemark.session.CaptureProblem;
import settlemark.session.CaptureReading;
import settlemark.session.CaptureSink;
import settlemark.session.SessionEvent;

/** Whatever a file holds, it is read to its end as a capture or as problems, and the same each time. */
final class CaptureFuzzTest {
    private static final String WHOLE = """
            settlemark-capture 1
            # a remark
            start 2026-03-02T09:15:00.5+01:00[Europe/Berlin]
            probe gauge demo-gauge sha256:%s serial:/dev/ttyUSB0
            probe air demo-air
            0.012345678 gauge up listening
            0.104300000 gauge 0 50 31 20 2B 36 0D 0A
            0.2 air stray 00ff
            0.25 gauge lost unplugged
            0.3 gauge back again
            0.4 gauge overrun
            1 air 2 A5 5A # two bytes
            end 20.000000000
            """.formatted("0a".repeat(32));

    static Stream<Arguments> captures() {
        return Stream.of(
                        WHOLE,
                        WHOLE.substring(0, WHOLE.length() - 40),
                        WHOLE.replace("\n", "\r\n"),
                        "settlemark-capture 1\nprobe p\n9.5 p 0 41\n3 p 0 42\n0 p 0 4",
                        "settlemark-capture 2\n")
                .map(text -> Arguments.of(
                        Named.of(text.length() + " characters of a capture", text.getBytes(StandardCharsets.UTF_8))));
    }

    @MethodSource("captures")
    @DictionaryFile(resourcePath = "capture.dict")
    @FuzzTest(maxDuration = "10m")
    void anyFileIsReadToItsEndAsEventsAndProblems(byte[] file) throws IOException {
        Told whole = new Told();
        CaptureReading reading = CaptureReader.read(new ByteArrayInputStream(file), whole);
        assertThat(whole.damage).isEqualTo(Math.min(100, reading.damagedLines()));
        assertThat(whole.events).hasSizeGreaterThanOrEqualTo((int) reading.events());
        assertThat(2 * whole.bytes).isLessThanOrEqualTo(file.length);
        Told slow = new Told();
        assertThat(CaptureReader.read(new Trickle(file), slow)).isEqualTo(reading);
        assertThat(slow.events).isEqualTo(whole.events);
    }

    /** Gives a byte at a time, as a slow pipe does. */
    private static final class Trickle extends InputStream {
        private final ByteArrayInputStream in;

        Trickle(byte[] file) {
            in = new ByteArrayInputStream(file);
        }

        @Override
        public int read() {
            return in.read();
        }

        @Override
        public int read(byte[] to, int from, int length) {
            return in.read(to, from, Math.min(1, length));
        }
    }

    private static final class Told implements CaptureSink {
        final List<Object> events = new ArrayList<>();
        int damage;
        int bytes;
        private int probes = -1;

        @Override
        public void begun(CaptureHeader header) {
            assertThat(probes).as("begun once").isEqualTo(-1);
            probes = header.probes().size();
        }

        @Override
        public void heard(SessionEvent event) {
            events.add(event);
            assertThat(event.timeNanos()).isNotNegative();
            if (event instanceof SessionEvent.Bytes arrived) {
                bytes += arrived.chunk().bytes().length;
                assertThat(arrived.probe()).isBetween(0, probes - 1);
            } else if (event instanceof SessionEvent.Link link) {
                assertThat(link.probe()).isBetween(0, probes - 1);
            } else {
                throw new AssertionError("a capture holds bytes and changes of links, got " + event);
            }
        }

        @Override
        public void problem(CaptureProblem problem) {
            damage += problem.damage() ? 1 : 0;
            assertThat(problem.message()).hasSizeLessThan(400).doesNotContain("\n", "\u001B");
        }
    }
}
