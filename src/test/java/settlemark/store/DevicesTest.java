package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceUse;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/** What a workspace remembers of devices. */
final class DevicesTest {
    private static final String A = "C0:FF:EE:00:00:01";
    private static final String USB = "usb:1209:0001:A1";

    @TempDir
    private Path folder = Path.of("");

    private SqliteStore open() throws StoreException {
        return SqliteStore.open(
                WorkspacePlace.chosen(folder.resolve("w.settlemark")),
                text -> ProfileLibrary.ids().stream()
                        .map(ProfileLibrary::get)
                        .filter(p -> p.text().equals(text))
                        .findFirst()
                        .orElseThrow(() -> new IllegalArgumentException("a text that nobody stored")));
    }

    private static ProbeSetup probe(String name, String address, String profile, Map<String, Role> roles, String id) {
        return new ProbeSetup(name, ProbeAddress.written(address), ProfileLibrary.get(profile), roles, id);
    }

    private static SessionHeader log(int day, ProbeSetup... probes) {
        return new SessionHeader(
                "log-" + day,
                "log",
                Instant.parse("2026-03-14T09:30:00Z").plusSeconds(86_400L * day),
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(probes),
                Optional.empty(),
                Optional.empty(),
                "test");
    }

    @Test
    void theNewestSessionOfADeviceCountsWithTheRolesThatItLastHad() throws StoreException {
        try (SqliteStore store = open()) {
            assertThat(store.devices()).isEmpty();
            store.begin(log(1, probe("room", "ble:" + A, "ble-environment", Map.of("temperature", Role.RETURN), A)));
            store.begin(log(2, probe("air", "ble:" + A + "@hci1", "ble-environment", Map.of(), A)));
            store.begin(log(3, probe("unknown", "/dev/ttyUSB0", "plain-line", Map.of(), "")));
            assertThat(store.devices()).singleElement().satisfies(use -> {
                assertThat(use.session()).isEqualTo(2);
                assertThat(use.lastUsed()).isEqualTo(Instant.parse("2026-03-16T09:30:00Z"));
                assertThat(use.setup().name()).isEqualTo("air");
                assertThat(use.setup().roles()).isEqualTo(Map.of("temperature", Role.RETURN));
                assertThat(use.isOf(A, ProbeAddress.written("ble:" + A))).isTrue();
                assertThat(use.isOf("", ProbeAddress.written("ble:" + A))).isFalse();
            });
            // By another profile, which has no such channel.
            store.begin(log(4, probe("air", "ble:" + A, "demo-air-ble", Map.of(), A)));
            assertThat(store.devices())
                    .singleElement()
                    .satisfies(use -> assertThat(use.setup().roles()).isEmpty());
        }
    }

    @Test
    void unitsOnOneLineAreDevicesOfTheirOwn() throws StoreException {
        try (SqliteStore store = open()) {
            store.begin(log(
                    1,
                    probe("one", "/dev/ttyUSB0@17", "modbus-registers", Map.of("supply", Role.SUPPLY), USB),
                    probe("two", "/dev/ttyUSB0@18", "modbus-registers", Map.of("supply", Role.RETURN), USB)));
            List<DeviceUse> uses = store.devices();
            assertThat(uses).hasSize(2);
            assertThat(uses.stream().filter(u -> u.isOf(USB, ProbeAddress.written("/dev/ttyUSB3@18"))))
                    .singleElement()
                    .satisfies(u -> assertThat(u.setup().roles()).isEqualTo(Map.of("supply", Role.RETURN)));
        }
    }

    @Test
    void theLastChargeThatADeviceToldIsRemembered() throws StoreException {
        try (SqliteStore store = open()) {
            long session = store.begin(log(1, probe("air", "ble:" + A, "demo-air-ble", Map.of(), A)));
            SampleBlock battery = new SampleBlock(0, 2, new long[] {1, 2, 3}, new double[] {90, 88, 0}, new byte[] {
                (byte) SampleStatus.OK.ordinal(),
                (byte) SampleStatus.OK.ordinal(),
                (byte) SampleStatus.NOT_READY.ordinal()
            });
            assertThat(store.devices().get(0).lastBatteryPercent(store)).isNaN();
            store.append(session, new WriteBatch(0, List.of(), List.of(battery), List.of(), List.of(), 1_000_000_000L));
            assertThat(store.devices().get(0).lastBatteryPercent(store)).isEqualTo(88);
        }
    }
}
