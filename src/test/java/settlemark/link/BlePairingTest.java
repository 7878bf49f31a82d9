package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;

/** Pairing asks a person, each time. */
@Timeout(60)
final class BlePairingTest {
    private static final String ADDRESS = BleBench.ADDRESS;

    private BleBench bench;

    private FakeDevice device;

    @BeforeEach
    void setUp() throws Exception {
        bench = new BleBench();
        device = bench.probe(ADDRESS);
    }

    @AfterEach
    void tearDown() throws Exception {
        bench.close();
    }

    @Test
    void aNumberIsConfirmedByThePerson() throws LinkException {
        Person person = new Person(true, OptionalInt.empty());
        bench.host.pair(ADDRESS, person);
        assertThat(person.asked).containsExactly("confirm Probe 1 (" + ADDRESS + ") 123456");
        assertThat(bench.service.calls())
                .containsSubsequence("RegisterAgent KeyboardDisplay", "Pair", "UnregisterAgent");
        assertThat(bench.host.bonded()).extracting(BleSeen::address).containsExactly(ADDRESS);
    }

    @Test
    void aPersonWhoSaysNoIsObeyed() throws LinkException {
        Person person = new Person(false, OptionalInt.empty());
        assertThatThrownBy(() -> bench.host.pair(ADDRESS, person))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("was not paired, as you chose");
        assertThat(person.asked).hasSize(1);
        assertThat(bench.host.bonded()).isEmpty();
    }

    @Test
    void aPasskeyIsEnteredByThePerson() throws LinkException {
        bench.service.agents.numbers = false;
        bench.host.pair(ADDRESS, new Person(false, OptionalInt.of(42)));
        assertThat(bench.service.agents.entered).isEqualTo(42);
        assertThatThrownBy(() -> bench.host.pair(ADDRESS, new Person(true, OptionalInt.empty())))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("as you chose");
    }

    @Test
    void aBondIsForgottenAndAStrangerCannotBe() throws LinkException {
        bench.host.pair(ADDRESS, new Person(true, OptionalInt.empty()));
        bench.host.forget(ADDRESS);
        assertThat(bench.service.calls()).contains("RemoveDevice /org/bluez/hci0/dev_C0_FF_EE_00_00_01");
        Await.until(
                "forgotten",
                2000,
                () -> bench.host.central().objects().paths(Bluez.DEVICE, "").isEmpty());
        assertThatThrownBy(() -> bench.host.forget(BleBench.OTHER))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("knows no device " + BleBench.OTHER);
    }

    @Test
    void aPairingThatTheServiceDidByItselfIsUndoneAndSaid() {
        device.characteristics.get(0).onStartNotify = () -> device.change("Paired", true);
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(Double.NaN), new BleHeard()))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("gives its values only to a paired computer: pair it first");
        assertThat(bench.service.calls()).contains("RemoveDevice /org/bluez/hci0/dev_C0_FF_EE_00_00_01");
    }

    @Test
    void whatAPersonPairedWhileItWasOpenStays() throws LinkException {
        BleHeard heard = new BleHeard();
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        bench.host.pair(ADDRESS, new Person(true, OptionalInt.empty()));
        device.characteristics.get(0).send((byte) 7);
        Await.until("a value", 3000, () -> heard.numbers(0).equals(List.of(7)));
        assertThat(bench.host.bonded()).hasSize(1);
        assertThat(bench.service.calls()).noneMatch(call -> call.startsWith("RemoveDevice"));
    }

    @Test
    void aProbeThatEndsTheConnectionWhenAskedMayWantToBePaired() {
        device.characteristics.get(0).onStartNotify = () -> {
            device.drop();
            throw new org.bluez.Error.Failed("Operation failed with ATT error: 0x0e");
        };
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(Double.NaN), new BleHeard()))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("ends the connection when its values are asked for")
                .hasMessageContaining("pair it first");
    }

    @Test
    void notPairedIsWhatTheServiceCallsAValueForPairedComputers() {
        device.characteristics.get(0).onStartNotify = () -> {
            throw new org.bluez.Error.NotPermitted("Not paired");
        };
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(Double.NaN), new BleHeard()))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("pair it first");
    }

    private static final class Person implements PairingPerson {
        private final boolean says;
        private final OptionalInt number;
        private final List<String> asked = new ArrayList<>();

        Person(boolean says, OptionalInt number) {
            this.says = says;
            this.number = number;
        }

        @Override
        public boolean confirm(String probe, int shown) {
            asked.add("confirm " + probe + " " + shown);
            return says;
        }

        @Override
        public boolean allow(String probe) {
            asked.add("allow " + probe);
            return says;
        }

        @Override
        public OptionalInt passkey(String probe) {
            asked.add("passkey " + probe);
            return number;
        }

        @Override
        public void show(String probe, int shown) {
            asked.add("show " + probe + " " + shown);
        }

        @Override
        public void brokenOff() {
            asked.add("broken off");
        }
    }
}
