package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;

final class ProbeRunTest {
    private static final String TALKING = """
            language: 1
            id: talking
            name: Invented gauge that says who it is
            simulated: true
            link: {serial: {baud: 9600}}
            messages:
              - id: identity
                ask: {text: "WHO\\n"}
                framing: {line: {end: "\\n", maximum-bytes: 40}}
                columns: {separator: ",", count: 3}
                fields:
                  - {name: tag, column: 0, literal: ID}
                  - {name: serial, column: 1, type: utf8}
                  - {name: firmware, column: 2, type: utf8}
              - id: reading
                ask: {text: "MEAS\\n", period: 1}
                framing: {line: {end: "\\n", maximum-bytes: 40}}
                columns: {separator: ",", count: 2}
                fields:
                  - {name: tag-2, column: 0, literal: R}
                  - {name: pressure, column: 1, type: text, decimals: 2}
            channels:
              - {id: p, label: P, field: pressure, unit: Pa}
            facts:
              - {id: serial-number, label: Serial number, field: serial}
              - {id: firmware, label: Firmware, field: firmware}
            """;

    private static final String SILENT = """
            language: 1
            id: silent
            name: Invented gauge whose frames end by silence
            simulated: true
            framing: {idle-gap: {milliseconds: 20, maximum-bytes: 8}}
            fields:
              - {name: start, at: 0, literal: "55"}
              - {name: pressure, at: 1, type: uint8}
            channels:
              - {id: p, label: P, field: pressure, unit: Pa}
            """;

    private static LiveSession session(String text) {
        Profile profile = ProfileReader.read("test.yaml", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        return new LiveSession(new SessionHeader(
                "key",
                "title",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(new ProbeSetup("gauge", new ProbeAddress("rig", "gauge"), profile, Map.of())),
                Optional.empty(),
                Optional.empty(),
                "test"));
    }

    private static SessionEvent bytes(long timeNanos, int input, String text) {
        return new SessionEvent.Bytes(0, new Chunk(timeNanos, input, text.getBytes(StandardCharsets.ISO_8859_1)));
    }

    private static ProbeView probe(LiveSession session) {
        return session.snapshot(Instant.EPOCH).probes().get(0);
    }

    @Test
    void whatADeviceSaysAboutItselfIsShownWithTheTimeSinceWhichItSaysSo() {
        LiveSession session = session(TALKING);
        assertThat(probe(session).facts()).isEmpty();
        session.take(bytes(5, 0, "ID,S-104,1.2\n"));
        session.take(bytes(6, 1, "R,3.50\n"));
        session.take(bytes(7, 0, "ID,S-104,1.3\n"));
        assertThat(probe(session).facts())
                .containsExactly(
                        new ProbeView.Fact("serial-number", "Serial number", "S-104", 5),
                        new ProbeView.Fact("firmware", "Firmware", "1.3", 7));
        assertThat(session.drain().samplesOf(0)).isEqualTo(1);
    }

    @Test
    void aFrameThatOnlySilenceEndsIsNotLostAtTheEndOfTheLink() {
        LiveSession session = session(SILENT);
        session.take(bytes(1_000_000_000L, 0, "U\u0007"));
        session.take(bytes(2_000_000_000L, 0, "U\u0009"));
        assertThat(session.drain().samplesOf(0)).isEqualTo(1);
        session.take(new SessionEvent.Link(0, 3_000_000_000L, LinkChange.ENDED, "closed"));
        WriteBatch batch = session.drain();
        assertThat(batch.samplesOf(0)).isEqualTo(1);
        assertThat(batch.samples().get(0).values()).containsExactly(9);
        assertThat(batch.samples().get(0).timesNanos()).containsExactly(2_000_000_000L);
    }
}
