package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.job.Fuel;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.link.RadioBench;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceList;
import settlemark.session.DeviceUse;
import settlemark.session.DeviceView;
import settlemark.session.JobStart;
import settlemark.session.OpenJob;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.ProbeSetup;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;
import settlemark.session.Reception;

/** The window before a session, on a real display, with a real pointer and real keys. */
@Tag("display")
@Timeout(180)
class StartDeskTest {
    private static final Profile SET = ProfileLibrary.get("demo-set-ble");
    private static final Profile GAUGE = ProfileLibrary.get("demo-gauge");
    private static final List<String> REMARK =
            List.of("Bluetooth is switched off: switch it on in the system's settings. Serial gauges work without it");

    private final FakeStart host = new FakeStart();
    private final List<DeviceView> devices = new ArrayList<>();
    private final DesktopStart[] window = new DesktopStart[1];

    @BeforeEach
    void needsADisplay() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
    }

    @AfterEach
    void close() {
        if (window[0] != null) {
            window[0].close();
        }
    }

    private WindowHands open() throws Exception {
        DesktopStart start = DesktopStart.show(new DesktopOptions(false, Optional.empty(), 1280, 720), "Settlemark");
        window[0] = start;
        start.choose(host);
        WindowHands hands = new WindowHands();
        hands.awaitSeen("1, Try the demo rig");
        return hands;
    }

    private WindowHands openProbes() throws Exception {
        WindowHands hands = open();
        hands.click("2, Connect probes");
        hands.click("Plan: ");
        hands.choose("gas supply with all");
        hands.fill("Place and job", "quarry rise 3");
        hands.fill("Appliance", "furnace");
        hands.fill("Inlet, least", "4.5");
        hands.fill("Inlet, most", "10.5");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("Look again");
        return hands;
    }

    private void find(DeviceView device) {
        devices.add(device);
        host.finds(new DeviceList(devices, List.of()));
    }

    private static DeviceView radio(int number, List<Profile> fitting, Optional<Health> health) {
        Reception reception = new Reception(OptionalInt.of(-60 - number), 0.4, false, false, 81, Map.of(), Map.of());
        ProbeAddress address = new ProbeAddress(ProbeAddress.BLE, "C0:FF:EE:00:00:0" + number);
        return new DeviceView(
                new FoundProbe(address, "Probe " + number, Optional.empty(), address.path(), Optional.of(reception)),
                fitting,
                Optional.empty(),
                new DeviceView.Battery(81, false),
                health);
    }

    private static DeviceView wired(Map<String, Role> before) {
        ProbeAddress address = new ProbeAddress(ProbeAddress.SERIAL, "/dev/ttyUSB0");
        DeviceUse use = new DeviceUse(new ProbeSetup("blue", address, GAUGE, before, "usb:1"), 1, 0, Instant.EPOCH);
        return new DeviceView(
                new FoundProbe(address, "USB serial", Optional.empty(), "usb:1"),
                List.of(),
                Optional.of(use),
                DeviceView.Battery.UNKNOWN,
                Optional.empty());
    }

    @Test
    void theDemoIsOneKeyAwayAndThePlateIsAskedForBeforeTheProbes() throws Exception {
        WindowHands hands = open();
        hands.key(KeyEvent.VK_SPACE);
        RadioBench.await("the demo", () -> host.demos == 1);
        hands.key(KeyEvent.VK_2);
        hands.awaitSeen("Place and job");
        hands.click("The plate says so");
        hands.key(KeyEvent.VK_ESCAPE);
        hands.key(KeyEvent.VK_RIGHT);
        hands.awaitWords("Place and job: type it");
        assertThat(host.looks).as("nothing is looked for yet").isZero();
        hands.key(KeyEvent.VK_LEFT);
        hands.awaitSeen("2, Connect probes");
    }

    private static OpenJob left(long number, String title, boolean simulated) {
        return new OpenJob(
                number,
                title,
                Instant.parse("2026-03-14T09:31:00Z").atZone(ZoneOffset.UTC),
                "Supply at lock-up",
                3,
                10,
                simulated);
    }

    @Test
    void aJobThatWasLeftIsOfferedAndWhatFailsIsSaid() throws Exception {
        OpenJob left = left(7, "quarry rise 3", false);
        host.open = List.of(left);
        WindowHands hands = open();
        hands.click("4, Go on with quarry rise 3");
        RadioBench.await("gone on", () -> host.goneOn.equals(List.of(left)));
        host.failsWith("gauge is not heard: press its button");
        hands.awaitWords("gauge is not heard: press its button");
        hands.click("4, Go on with quarry rise 3");
        RadioBench.await("again", () -> host.goneOn.size() == 2);
    }

    @Test
    void allJobsThatWereLeftAreOfferedNewestFirstAndThoseOnTheRigSaySo() throws Exception {
        host.open = List.of(
                left(9, "mill lane 1", false),
                left(8, "ash lane 12", true),
                left(7, "quarry rise 3", false),
                left(5, "elm row 3", false),
                left(2, "far end 9", false));
        WindowHands hands = open();
        hands.awaitSeen("4, Go on with mill lane 1");
        hands.awaitSeen("5, SIMULATED: go on with ash lane 12");
        hands.awaitSeen("7, Go on with elm row 3");
        hands.click("6, Go on with quarry rise 3");
        RadioBench.await("gone on", () -> host.goneOn.equals(List.of(host.open.get(2))));
    }

    @Test
    void theLastPlateOfATitleIsOfferedAndWhatLooksWrongInItIsSaid() throws Exception {
        RatingPlate plate = new RatingPlate(
                "furnace in the attic",
                Fuel.NATURAL_GAS,
                List.of(
                        new StagePlate("low", "low fire", 3.5, 0.3, Unit.INCH_OF_WATER, Double.NaN),
                        new StagePlate("high", "high fire", 1.7, 0.2, Unit.INCH_OF_WATER, Double.NaN)),
                new Limit(4.5, 10.5, Unit.INCH_OF_WATER, "plate"),
                new Limit(30, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate"));
        host.plates.put("quarry rise 3", plate);
        WindowHands hands = open();
        hands.click("2, Connect probes");
        hands.click("Plan: ");
        hands.choose("two-stage furnace, natural gas");
        hands.fill("Place and job", "quarry rise 3");
        hands.click("Take the last plate: furnace in the attic");
        hands.awaitWords(
                "low fire has 3.50 inH\u2082O and high fire only 1.70 inH\u2082O: the lower stage stands above the higher");
        assertThat(host.titles).endsWith("quarry rise 3").doesNotHaveDuplicates();
        hands.click("The plate says so");
        hands.awaitSeen("Look again");
    }

    @Test
    void aFoundProbeGetsItsRoleByThePointerAndTheJobBegins() throws Exception {
        WindowHands hands = openProbes();
        // Or more, where the window took longer to open than it rests between two.
        RadioBench.await("a look", () -> host.looks >= 1);
        hands.awaitWords("Nothing else is in reach");
        hands.click("Connect and start the job");
        assertThat(host.begun).isEmpty();
        find(radio(1, List.of(SET), Optional.empty()));
        hands.awaitSeen("Probe 1: \u221261 dBm, heard now, battery 81 %");
        hands.click("probe of the Inlet");
        hands.choose("Probe 1, " + SET.channels().get(1).label());
        hands.awaitWords("Inlet: Probe 1, " + SET.channels().get(1).label());
        hands.awaitWords("simulated. quarry rise 3");
        hands.click("Connect and start the job");
        RadioBench.await("begun", () -> host.begun.size() == 1);
        JobStart start = host.begun.get(0);
        assertThat(start.title()).isEqualTo("quarry rise 3");
        assertThat(start.plan().key()).isEqualTo("supply-check");
        assertThat(start.plate().inlet().upper()).isEqualTo(10.5);
        assertThat(start.probes()).singleElement().satisfies(p -> {
            assertThat(p.address().toString()).isEqualTo("ble:C0:FF:EE:00:00:01");
            assertThat(p.roles())
                    .containsExactly(Map.entry(SET.channels().get(1).name(), Role.INLET));
        });
        hands.awaitSeen("Connecting");
        host.failsWith("Probe 1 is not heard: press its button");
        hands.awaitWords("Probe 1 is not heard: press its button");
        hands.awaitSeen("Connect and start the job");
    }

    @Test
    void aRoleIsGivenAndTakenAwayByKeysAlone() throws Exception {
        WindowHands hands = openProbes();
        find(radio(1, List.of(SET), Optional.empty()));
        hands.awaitSeen("Probe 1: ");
        hands.key(KeyEvent.VK_1);
        hands.awaitSeen("Which probe is the inlet?");
        hands.awaitListFocused();
        hands.key(KeyEvent.VK_DOWN);
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("Inlet: Probe 1, " + SET.channels().get(1).label());
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("Which probe is the inlet?");
        hands.awaitListFocused();
        hands.key(KeyEvent.VK_ESCAPE);
        hands.awaitGone("Which probe is the inlet?");
        hands.key(KeyEvent.VK_1);
        hands.awaitSeen("Which probe is the inlet?");
        hands.awaitListFocused();
        hands.key(KeyEvent.VK_END);
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("Inlet: no probe yet");
        hands.key(KeyEvent.VK_L);
        RadioBench.await("looked again", () -> host.looks >= 2);
    }

    @Test
    void rolesOfTheLastTimeAreThereAndWhatThePersonChangesStays() throws Exception {
        find(wired(Map.of("port-1", Role.INLET)));
        WindowHands hands = openProbes();
        hands.awaitWords("Inlet: blue, P1 /dev/ttyUSB0, on a wire");
        hands.click("probe of the Inlet");
        hands.awaitSeen("Which probe is the inlet?");
        assertThat(hands.seen()).anyMatch(n -> n.contains("Which probe is the inlet?"));
        hands.choose("No probe");
        hands.awaitWords("Inlet: no probe yet");
        find(radio(2, List.of(), Optional.empty()));
        hands.awaitSeen("Probe 2: \u221262 dBm, heard now, no profile fits");
        hands.awaitWords("Inlet: no probe yet");
    }

    @Test
    void aDeviceThatNoProfileFitsIsReadByOneThatIsChosen() throws Exception {
        WindowHands hands = openProbes();
        hands.key(KeyEvent.VK_O);
        hands.awaitSeen("Port, or ble: and the address");
        hands.type("/tmp/gauge");
        hands.key(KeyEvent.VK_ENTER);
        hands.choose(GAUGE.name());
        hands.choose("Inlet from P2");
        hands.awaitWords("Inlet: demo-gauge, P2 gauge, on a wire");
        hands.click("Connect and start the job");
        RadioBench.await("begun", () -> host.begun.size() == 1);
        assertThat(host.begun.get(0).probes().get(0).address().toString()).isEqualTo("serial:/tmp/gauge");
    }

    @Test
    void onlyWhatIsAbnormalHasAMarkAndARemedyIsSaid() throws Exception {
        WindowHands hands = openProbes();
        devices.add(radio(1, List.of(SET), Optional.empty()));
        devices.add(radio(
                2, List.of(SET), Optional.of(new Health(HealthClass.MAINTENANCE_REQUIRED, "its battery has 14 %"))));
        host.finds(new DeviceList(devices, REMARK));
        hands.awaitSeen(REMARK.get(0));
        hands.awaitSeen("Probe 2: \u221262 dBm, its battery has 14 %");
        assertThat(hands.seen()).contains("Probe 1: \u221261 dBm, heard now, battery 81 %");
    }

    @Test
    void aPairingAsksInTheWindowAndOnlyAClearYesIsOne() throws Exception {
        WindowHands hands = openProbes();
        find(radio(1, List.of(SET), Optional.empty()));
        hands.awaitSeen("Probe 1: ");
        PairingPerson person = pair(hands);
        CompletableFuture<Boolean> answer = CompletableFuture.supplyAsync(() -> person.confirm("Probe 1", 4711));
        hands.awaitSeen("Does Probe 1 show this number? 004711");
        hands.key(KeyEvent.VK_SPACE);
        hands.key(KeyEvent.VK_ENTER);
        assertThat(answer).as("neither Space nor Enter says yes").isNotDone();
        hands.key(KeyEvent.VK_Y);
        assertThat(answer.join()).isTrue();
        CompletableFuture<OptionalInt> typed = CompletableFuture.supplyAsync(() -> person.passkey("Probe 1"));
        hands.awaitSeen("Type the number that Probe 1 shows");
        hands.type("004711");
        hands.key(KeyEvent.VK_ENTER);
        assertThat(typed.join()).hasValue(4711);
        CompletableFuture<Boolean> refused = CompletableFuture.supplyAsync(() -> person.allow("Probe 1"));
        hands.awaitSeen("Probe 1 has neither keys nor display");
        hands.key(KeyEvent.VK_ESCAPE);
        assertThat(refused.join()).isFalse();
        CompletableFuture<Boolean> brokenOff = CompletableFuture.supplyAsync(() -> person.confirm("Probe 1", 5));
        hands.awaitSeen("Does Probe 1 show this number? 000005");
        person.brokenOff();
        assertThat(brokenOff.join()).isFalse();
        host.pairedWith("paired with ble:C0:FF:EE:00:00:01");
        hands.awaitWords("paired with ble:C0:FF:EE:00:00:01");
    }

    private PairingPerson pair(WindowHands hands) {
        hands.awaitSeen("Probe 1: ");
        hands.click("Pair");
        hands.choose("Probe 1");
        RadioBench.await("pairing", () -> host.person != null);
        assertThat(host.pairings).extracting(ProbeAddress::toString).containsExactly("ble:C0:FF:EE:00:00:01");
        PairingPerson person = host.person;
        if (person == null) {
            throw new AssertionError("nobody is asked");
        }
        return person;
    }

    @Test
    void aQuestionThatIsOpenWhenTheWindowGoesIsANo() throws Exception {
        WindowHands hands = openProbes();
        find(radio(1, List.of(SET), Optional.empty()));
        PairingPerson person = pair(hands);
        CompletableFuture<Boolean> answer = CompletableFuture.supplyAsync(() -> person.confirm("Probe 1", 1));
        hands.awaitSeen("Does Probe 1 show this number?");
        if (window[0] != null) {
            window[0].close();
        }
        assertThat(answer.join()).isFalse();
        EventQueue.invokeAndWait(() -> {});
    }
}
