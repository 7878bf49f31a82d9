package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.job.Plans;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Sighting;
import settlemark.session.ProbeHost.FoundProbe;

/** Which channel of which device gives which role. */
class RoleChoiceTest {
    private static final Profile GAUGE = ProfileLibrary.get("demo-gauge");
    private static final Profile AIR = ProfileLibrary.get("demo-air");
    private static final Profile PLAIN = ProfileLibrary.get("plain-line");

    private static ProbeAddress port(int number) {
        return new ProbeAddress(ProbeAddress.SERIAL, "/dev/ttyUSB" + number);
    }

    private static DeviceView device(int number, Profile profile, Map<String, Role> before) {
        FoundProbe found = new FoundProbe(
                port(number),
                "gauge",
                Optional.of(new Sighting.Port("", Optional.empty(), Optional.empty())),
                "id" + number);
        Optional<DeviceUse> use = before.isEmpty()
                ? Optional.empty()
                : Optional.of(new DeviceUse(
                        new ProbeSetup("blue " + number, port(number), profile, before, "id" + number),
                        1,
                        0,
                        Instant.EPOCH));
        return new DeviceView(found, List.of(profile), use, DeviceView.Battery.UNKNOWN, Optional.empty());
    }

    private static RoleChoice.Place place(int number, Profile profile, String channel) {
        return new RoleChoice.Place(port(number), "", profile.id(), profile, channel);
    }

    @Test
    void onlyChannelsThatMeasureWhatTheRoleNeedsAreOffered() {
        DeviceView device = device(0, GAUGE, Map.of());
        assertThat(RoleChoice.offered(device, List.of(), Role.INLET))
                .extracting(RoleChoice.Place::channel)
                .containsExactly("port-1", "port-2");
        assertThat(RoleChoice.offered(device, List.of(), Role.SUPPLY)).isEmpty();
        assertThatThrownBy(() -> RoleChoice.NOTHING.with(Role.SUPPLY, place(0, GAUGE, "port-1")))
                .hasMessageContaining("supply is no channel in inH");
        assertThatThrownBy(() -> place(0, GAUGE, "port-3")).hasMessageContaining("no channel \"port-3\"");
    }

    @Test
    void aChannelHasOneRoleAndADeviceOneProfile() {
        RoleChoice choice = RoleChoice.NOTHING
                .with(Role.INLET, place(0, GAUGE, "port-1"))
                .with(Role.MANIFOLD, place(0, GAUGE, "port-2"))
                .with(Role.MANIFOLD, place(0, GAUGE, "port-1"));
        assertThat(choice.places().keySet()).containsExactly(Role.MANIFOLD);
        RoleChoice both = choice.with(Role.INLET, place(0, GAUGE, "port-2"));
        String number = PLAIN.channels().get(0).name();
        assertThat(both.with(Role.INLET, place(0, PLAIN, number)).places().keySet())
                .as("read by another profile, its other role goes")
                .containsExactly(Role.INLET);
        assertThat(both.with(Role.INLET, place(1, PLAIN, number)).places().keySet())
                .containsExactlyInAnyOrder(Role.INLET, Role.MANIFOLD);
    }

    @Test
    void rolesOfTheLastTimeAreOfferedWhereTheyAreFree() {
        DeviceView device = device(0, GAUGE, Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD));
        RoleChoice choice = RoleChoice.NOTHING.withRemembered(device);
        assertThat(choice.of(Role.INLET).orElseThrow().name()).isEqualTo("blue 0");
        assertThat(choice.of(Role.MANIFOLD).orElseThrow().channel()).isEqualTo("port-2");
        RoleChoice taken =
                RoleChoice.NOTHING.with(Role.INLET, place(1, GAUGE, "port-1")).withRemembered(device);
        assertThat(taken.of(Role.INLET).orElseThrow().address()).isEqualTo(port(1));
        assertThat(taken.of(Role.MANIFOLD).orElseThrow().address()).isEqualTo(port(0));
    }

    @Test
    void whatAPlanLacksIsNamedWithItsSteps() {
        var plan = Plans.get("two-stage-natural-gas");
        RoleChoice gas = RoleChoice.NOTHING
                .with(Role.INLET, place(0, GAUGE, "port-1"))
                .with(Role.MANIFOLD, place(0, GAUGE, "port-2"));
        assertThat(gas.missing(plan))
                .containsExactly(
                        "the supply has no probe and is needed for As found, low fire; As found, high fire and more",
                        "the return has no probe and is needed for As found, low fire; As found, high fire and more");
        assertThat(gas.missing(Plans.get("supply-check"))).isEmpty();
        assertThat(RoleChoice.NOTHING.missing(Plans.get("supply-check"))).hasSize(1);
    }

    @Test
    void aDeviceIsOneProbeOfTheSessionAndTwoOfAKindHaveTwoNames() {
        RoleChoice choice = RoleChoice.NOTHING
                .with(Role.INLET, place(0, GAUGE, "port-1"))
                .with(Role.MANIFOLD, place(1, GAUGE, "port-2"))
                .with(Role.SUPPLY, place(2, AIR, AIR.channels().get(0).name()))
                .with(Role.RETURN, place(2, AIR, AIR.channels().get(1).name()));
        assertThat(choice.setups())
                .extracting(ProbeSetup::name)
                .containsExactly("demo-gauge", "demo-gauge 2", "demo-air");
        assertThat(choice.setups().get(2).roles().values()).containsExactlyInAnyOrder(Role.SUPPLY, Role.RETURN);
        assertThat(choice.without(Role.MANIFOLD).setups()).hasSize(2);
    }
}
