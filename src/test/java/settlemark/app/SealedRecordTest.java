package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.SealedSensor;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.profile.ByteText;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.store.SqliteStore;

/** A job with a probe whose frames are protected. */
final class SealedRecordTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    void aRecordIsNotMadeWithoutTheKeyThatTheSessionWasStoredWith() throws Exception {
        Path file = SealedSensor.profile(folder);
        Profile profile = ProfileReader.read("sealed.yaml", java.nio.file.Files.readAllBytes(file))
                .orThrow();
        ProbeSetup probe = new ProbeSetup(
                "room",
                new ProbeAddress(ProbeAddress.BLE, SealedSensor.ADDRESS),
                profile,
                Map.of("temperature", Role.SUPPLY),
                SealedSensor.ADDRESS);
        SessionHeader header =
                DemoScene.header(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC, "test", List.of(probe));
        ProbeKeys keys = new ProbeKeys(Map.of("room", ByteText.ofHex(SealedSensor.KEY)));
        assertThat(keys.toString()).isEqualTo("ProbeKeys[room]");
        try (SqliteStore store = Workspaces.person(Optional.of(folder.resolve("w.settlemark")))) {
            long number = store.begin(header);
            LiveSession session = new LiveSession(header, keys);
            for (int i = 1; i <= 5; i++) {
                session.take(new SessionEvent.Bytes(
                        0,
                        new Chunk(
                                i * 1_000_000_000L,
                                ByteText.ofHex(SealedSensor.FRAME).toBytes())));
            }
            store.append(number, session.drain());
            store.end(number, 6_000_000_000L);
            assertThat(store.sampleCount(number, 0)).isEqualTo(10);
            assertThatThrownBy(() -> RecordMaking.make(store, number, folder.resolve("a")))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("the frames of probe room are protected")
                    .hasMessageContaining("--key room=FILE");
            assertThat(folder.resolve("a")).doesNotExist();
            Optional<RecordMaking.Made> made = RecordMaking.make(store, number, keys, "", folder.resolve("b"));
            assertThat(made.orElseThrow().record().instruments().get(0).samples())
                    .isEqualTo(10);
            assertThat(made.get().files()).allSatisfy(f -> assertThat(f).exists());
        }
    }
}
