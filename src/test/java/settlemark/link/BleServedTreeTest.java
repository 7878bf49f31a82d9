package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;
import org.junit.jupiter.api.Test;
import settlemark.profile.Profile;
import settlemark.session.LinkException;

/** What a profile's simulated probe shows to the Bluetooth service. */
final class BleServedTreeTest {
    private final StringBuilder written = new StringBuilder();

    private BleServedTree tree(Profile profile) throws LinkException {
        return new BleServedTree("/probe", profile, (uuid, bytes) -> written.append(bytes.length), "");
    }

    @Test
    void servicesValuesAndDescriptorsAreShownOnceEachWithTheirFlags() throws LinkException {
        BleServedTree tree = tree(BleVmProfiles.of("ess"));
        Map<String, Map<String, Variant<?>>> shown = new HashMap<>();
        Map<DBusPath, Map<String, Map<String, Variant<?>>>> managed = tree.GetManagedObjects();
        managed.forEach((path, types) ->
                types.forEach((type, properties) -> shown.put(type + " " + value(properties, "UUID"), properties)));
        assertThat(shown)
                .containsOnlyKeys(
                        Bluez.GATT_SERVICE + " " + BleProfiles.ESS,
                        Bluez.GATT_SERVICE + " " + BleProfiles.BATTERY_SERVICE,
                        Bluez.GATT_SERVICE + " " + BleProfiles.DEMO_SERVICE,
                        Bluez.CHARACTERISTIC + " " + BleProfiles.PRESSURE,
                        Bluez.CHARACTERISTIC + " " + BleProfiles.BATTERY,
                        Bluez.CHARACTERISTIC + " " + BleProfiles.DEMO_VALUE,
                        Bluez.CHARACTERISTIC + " " + BleProfiles.DEMO_COMMAND,
                        Bluez.DESCRIPTOR + " " + BleProfiles.uuid("2904"),
                        Bluez.DESCRIPTOR + " " + BleProfiles.uuid("290C"));
        assertThat(flags(shown, BleProfiles.PRESSURE)).containsExactly("notify", "read");
        assertThat(flags(shown, BleProfiles.BATTERY)).containsExactly("read");
        assertThat(flags(shown, BleProfiles.DEMO_COMMAND)).containsExactly("write", "write-without-response");
        assertThat(tree.advertised()).containsExactly(UUID.fromString(BleProfiles.ESS));
    }

    private static List<String> flags(Map<String, Map<String, Variant<?>>> shown, String uuid) {
        Map<String, Variant<?>> properties = Objects.requireNonNull(shown.get(Bluez.CHARACTERISTIC + " " + uuid));
        return List.of((String[]) value(properties, "Flags"));
    }

    private static Object value(Map<String, Variant<?>> properties, String name) {
        return Objects.requireNonNull(properties.get(name), name).getValue();
    }

    @Test
    void aLongValueIsReadInParts() throws LinkException {
        BleServedValue value =
                tree(BleVmProfiles.of("ess")).value(BleVmProfiles.BATTERY).orElseThrow();
        value.hold(new byte[] {1, 2, 3});
        assertThat(value.ReadValue(Map.of())).containsExactly(1, 2, 3);
        assertThat(value.ReadValue(Map.of("offset", new Variant<>(new org.freedesktop.dbus.types.UInt16(2)))))
                .containsExactly(3);
        assertThat(value.ReadValue(Map.of("offset", new Variant<>(new org.freedesktop.dbus.types.UInt16(9)))))
                .isEmpty();
    }

    @Test
    void whatIsWrittenIsHandedOnAndWhoListensIsKnown() throws LinkException {
        BleServedTree tree = tree(BleVmProfiles.of("fast"));
        BleServedValue value = tree.value(0).orElseThrow();
        value.WriteValue(new byte[4], Map.of());
        assertThat(written).hasToString("4");
        assertThat(value.isListenedTo()).isFalse();
        value.StartNotify();
        assertThat(value.isListenedTo()).isTrue();
        tree.unlistened();
        assertThat(value.isListenedTo()).isFalse();
    }

    @Test
    void aBeaconHasNoServicesOfItsOwn() throws LinkException {
        BleServedTree tree = tree(BleVmProfiles.of("beacon"));
        assertThat(tree.objects()).isEmpty();
        assertThat(tree.value(0)).isEmpty();
    }

    @Test
    void aCharacteristicWithoutAServiceIsRefusedWithTheRemedy() {
        Profile profile =
                new BleProfiles().notifiesAnywhere(BleProfiles.DEMO_VALUE).profile();
        assertThatThrownBy(() -> tree(profile))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("add \"service\" beside its \"uuid\"");
    }
}
