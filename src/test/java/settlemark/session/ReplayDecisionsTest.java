package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.settle.SettleState;

/** A stored session is judged as on the day, however its bytes were cut, and however fast it is gone through. */
final class ReplayDecisionsTest {
    private static final String PROFILE = """
            language: 1
            id: plain
            name: Invented gauge that says a number a line
            simulated: true
            link: {serial: {baud: 9600}}
            framing: {line: {end: "\\n", maximum-bytes: 40}}
            columns: {separator: ",", count: 1}
            fields:
              - {name: value, column: 0, type: text, decimals: 3}
            channels:
              - {id: x, label: X, field: value, unit: "%s"}
            """;

    /** How the bytes of a line come, and what happens in between. */
    private interface Course {
        void line(LiveSession session, long timeNanos, byte[] line);
    }

    private static LiveSession session(Role role, String unit) {
        Profile profile = ProfileReader.read(
                        "test.yaml", PROFILE.formatted(unit).getBytes(StandardCharsets.UTF_8))
                .orThrow();
        return new LiveSession(new SessionHeader(
                "key",
                "title",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(new ProbeSetup("gauge", new ProbeAddress("rig", "gauge"), profile, Map.of("x", role))),
                Optional.empty(),
                Optional.empty(),
                "test"));
    }

    /** State after each line. */
    private static List<SettleState> states(Role role, String unit, String file, Course course) throws IOException {
        LiveSession session = session(role, unit);
        List<SettleState> states = new ArrayList<>();
        for (String row : rows(file)) {
            String[] columns = row.split(",", -1);
            long at = Math.round(Double.parseDouble(columns[0]) * 1e9);
            course.line(session, at, (columns[1] + "\n").getBytes(StandardCharsets.US_ASCII));
            states.add(session.snapshot(Instant.EPOCH).channels().get(0).settle());
        }
        return states;
    }

    private static List<String> rows(String file) throws IOException {
        try (InputStream in = ReplayDecisionsTest.class.getResourceAsStream("/settle/examples/" + file)) {
            assertThat(in).isNotNull();
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            return lines.subList(1, lines.size());
        }
    }

    private static void cut(LiveSession session, long timeNanos, byte[] line, int size) {
        for (int from = 0; from < line.length; from += size) {
            byte[] piece = Arrays.copyOfRange(line, from, Math.min(line.length, from + size));
            session.take(new SessionEvent.Bytes(0, new Chunk(timeNanos, 0, piece)));
        }
    }

    @ParameterizedTest
    @CsvSource({"MANIFOLD,[in_i'H2O],X003_manifold.csv", "SUPPLY,[degF],X004_supply.csv", "STACK,[degF],X009_stack.csv"
    })
    void neitherTheCutOfItsBytesNorTheSpeedChangesADecision(Role role, String unit, String file) throws IOException {
        List<SettleState> whole = states(role, unit, file, (s, t, line) -> cut(s, t, line, line.length));
        assertThat(whole.stream().filter(SettleState::settled)).isNotEmpty();
        assertThat(whole.stream().filter(s -> !s.settled())).isNotEmpty();
        for (int size = 1; size <= 2; size++) {
            int piece = size;
            assertThat(states(role, unit, file, (s, t, line) -> cut(s, t, line, piece)))
                    .as("pieces of %d", size)
                    .isEqualTo(whole);
        }
        assertThat(states(role, unit, file, ReplayDecisionsTest::slowly)).isEqualTo(whole);
    }

    /** As a slow computer goes through it: the time is told, looked at and written often, at another hour. */
    private static void slowly(LiveSession session, long timeNanos, byte[] line) {
        for (int i = 2; i > 0; i--) {
            session.passTo(timeNanos - i * 1_000_000L);
            session.snapshot(Instant.ofEpochSecond(4_000_000_000L + i));
        }
        cut(session, timeNanos, line, line.length);
        session.drain();
        session.passTo(timeNanos + 1_000_000L);
    }

    /** What the chunks say of their time is what counts: the test would notice a decision that looked at anything else. */
    @Test
    void anotherTimeOfTheBytesDoesChangeThem() throws IOException {
        List<SettleState> whole =
                states(Role.MANIFOLD, "[in_i'H2O]", "X003_manifold.csv", (s, t, line) -> cut(s, t, line, line.length));
        assertThat(states(Role.MANIFOLD, "[in_i'H2O]", "X003_manifold.csv", (s, t, line) -> cut(s, 2 * t, line, 99)))
                .isNotEqualTo(whole);
    }
}
