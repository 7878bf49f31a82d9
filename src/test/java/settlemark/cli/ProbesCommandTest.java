package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import settlemark.measure.Role;
import settlemark.profile.ByteText;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Sighting;
import settlemark.session.DeviceList;
import settlemark.session.DeviceUse;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.ProbeSetup;
import settlemark.session.Reception;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

final class ProbesCommandTest {
    private final FakeProgram program = new FakeProgram();

    @TempDir
    private Path folder = Path.of("");

    private static FoundProbe usb(String path, String description, int vendor, int product) {
        return new FoundProbe(
                new ProbeAddress("serial", path),
                description,
                Optional.of(new Sighting.Port(description, Optional.of(vendor), Optional.of(product))));
    }

    /** 0x1209 is the vendor number that pid.codes gives to open projects. */
    private Path bench() throws IOException {
        String text = new String(ProfileLibrary.document("plain-line").orElseThrow(), StandardCharsets.UTF_8);
        return Files.writeString(
                folder.resolve("bench.yaml"),
                text.replace("id: plain-line", "id: bench")
                        .replace("link:", "recognise:\n  - serial: {vendor: 0x1209, product: 0x0001}\nlink:"));
    }

    @Test
    void aPortSaysWhichProfilesFitAndWhyTheOthersDoNot() throws IOException {
        Path bench = bench();
        program.inReach.add(usb("/dev/serial/by-id/one", "Bench gauge (ttyUSB0)", 0x1209, 1));
        program.inReach.add(usb("/dev/serial/by-id/two", "Other (ttyUSB1)", 0x1209, 0xBEEF));
        Ran ran = Ran.of(program, "probes", "--profiles", folder);
        assertThat(ran.code()).isZero();
        String[] ports = ran.out().split("(?m)^(?=/dev)", -1);
        assertThat(ports[0].lines())
                .contains(
                        "/dev/serial/by-id/one  Bench gauge (ttyUSB0)  USB 1209:0001",
                        "    settlemark log --probe gauge=/dev/serial/by-id/one --profile gauge=" + bench)
                .anyMatch(line -> line.startsWith("  fits " + bench + ": "))
                .anyMatch(line -> line.startsWith("  not demo-gauge") && line.contains("recognise"));
        assertThat(ports[1].lines())
                .contains("/dev/serial/by-id/two  Other (ttyUSB1)  USB 1209:beef", "  no profile fits by itself")
                .anyMatch(line -> line.startsWith("  not " + bench + ": ") && line.contains("USB product"));
        assertThat(ran.err()).isEmpty();
    }

    @Test
    void everyProfileIsNamedForEveryPort() throws IOException {
        bench();
        program.inReach.add(usb("/dev/ttyUSB0", "Other", 1, 2));
        String out = Ran.of(program, "probes", "--profiles", folder).out();
        assertThat(ProfileLibrary.ids()).allMatch(out::contains);
    }

    @Test
    void jsonGivesAnObjectAPort() throws IOException {
        Path bench = bench();
        program.inReach.add(usb("/dev/ttyUSB0", "Bench gauge", 0x1209, 1));
        program.inReach.add(new FoundProbe(new ProbeAddress("serial", "/dev/ttyS0"), "On the board"));
        List<JsonNode> ports = Ran.of(program, "probes", "--json", "--profiles", folder)
                .out()
                .lines()
                .map(JsonMapper.shared()::readTree)
                .toList();
        assertThat(ports).hasSize(2);
        assertThat(ports.get(0).get("address").stringValue()).isEqualTo("serial:/dev/ttyUSB0");
        assertThat(ports.get(0).get("usb").stringValue()).isEqualTo("1209:0001");
        assertThat(ports.get(0).get("profiles")).hasSize(ProfileLibrary.ids().size() + 1);
        JsonNode last = ports.get(0).get("profiles").get(ProfileLibrary.ids().size());
        assertThat(last.get("profile").stringValue()).isEqualTo(bench.toString());
        assertThat(last.get("fits").booleanValue()).isTrue();
        assertThat(ports.get(0).get("profiles").get(0).get("reasons")).isNotEmpty();
        assertThat(ports.get(1).get("usb")).isNull();
        assertThat(ports.get(1).get("profiles")).allMatch(p -> !p.get("fits").booleanValue());
    }

    @Test
    void nothingInReachIsExitCodeFourWithTheRemedy() {
        Ran ran = Ran.of(program, "probes");
        assertThat(ran.code()).isEqualTo(4);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains("Nothing is in reach: plug the gauge or its adapter in");
    }

    @Test
    void aBadProfileOfTheFolderIsToldAndLeftOut() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.yaml"), "language: 1\nframing: 3\n");
        Files.writeString(folder.resolve("profile.schema.json"), "{}");
        Files.writeString(folder.resolve("readme.txt"), "no profile");
        program.inReach.add(usb("/dev/ttyUSB0", "Other", 1, 2));
        Ran ran = Ran.of(program, "probes", "--profiles", folder);
        assertThat(ran.code()).isZero();
        assertThat(ran.err())
                .contains(bad + ":", bad + ": left out, because it is no good profile")
                .doesNotContain("schema", "readme");
    }

    @Test
    void aLinkThatLeadsOutOfTheFolderIsNotFollowed() throws IOException {
        Path inside = Files.createDirectory(folder.resolve("inside"));
        Path link = Files.createSymbolicLink(inside.resolve("x.yaml"), bench());
        program.inReach.add(usb("/dev/ttyUSB0", "Other", 0x1209, 1));
        Ran ran = Ran.of(program, "probes", "--profiles", inside);
        assertThat(ran.err()).contains(link + ": left out, because it leads out of the folder");
        assertThat(ran.out()).doesNotContain("x.yaml");
    }

    private static FoundProbe radio(String address, int dbm, boolean connected, double batteryPercent) {
        Reception reception = new Reception(
                OptionalInt.of(dbm), connected ? Double.NaN : 2, connected, false, batteryPercent, Map.of(), Map.of());
        return new FoundProbe(
                new ProbeAddress("ble", address),
                "Sensor",
                Optional.of(new Sighting.Radio("Sensor", List.of(), List.of())),
                address,
                Optional.of(reception));
    }

    @Test
    void healthIsOneOfTheFourClassesOrGoodWithItsRemedy() {
        program.inReach.add(radio("C0:FF:EE:00:00:01", -60, false, 90));
        program.inReach.add(radio("C0:FF:EE:00:00:02", -95, false, 90));
        program.inReach.add(radio("C0:FF:EE:00:00:03", -60, false, 14));
        program.inReach.add(radio("C0:FF:EE:00:00:04", -60, true, 90));
        List<JsonNode> devices = Ran.of(program, "probes", "--json")
                .out()
                .lines()
                .map(JsonMapper.shared()::readTree)
                .toList();
        assertThat(devices)
                .extracting(d -> d.get("health").stringValue())
                .containsExactly("good", "out of specification", "maintenance required", "function check");
        assertThat(devices.get(1).get("health_words").stringValue()).contains("-95 dBm", "move nearer");
        assertThat(devices.get(2).get("health_words").stringValue()).contains("14 %", "charge or change it");
        assertThat(devices.get(3).get("health_words").stringValue()).contains("another program");
        assertThat(devices.get(0).get("signal_dbm").intValue()).isEqualTo(-60);
        assertThat(devices.get(0).get("battery_percent").doubleValue()).isEqualTo(90);
        String text = Ran.of(program, "probes").out();
        assertThat(text)
                .contains("ble:C0:FF:EE:00:00:03  Sensor  -60 dBm, heard 2 s ago, battery 14 %\n"
                        + "  maintenance required: its battery has 14 %: charge or change it\n");
    }

    @Test
    void aDeviceThatWasUsedLatelyAndIsNotHeardIsAFailureWithItsCausesInOrder() {
        ProbeSetup setup = new ProbeSetup(
                "air",
                new ProbeAddress("ble", "C0:FF:EE:00:00:01"),
                ProfileLibrary.get("ble-environment"),
                Map.of("temperature", Role.SUPPLY),
                "C0:FF:EE:00:00:01");
        program.remembered.add(
                new DeviceList.Remembered(new DeviceUse(setup, 3, 0, FakeProgram.NOW.minus(Duration.ofDays(2))), 45));
        Ran ran = Ran.of(program, "probes");
        assertThat(ran.code()).isEqualTo(4);
        assertThat(ran.out())
                .contains(
                        "not in reach",
                        "battery 45 % the last time",
                        "as air by profile ble-environment: temperature" + " supply")
                .containsSubsequence("failure: it is not heard", "asleep", "out of range", "a telephone");
        program.remembered.clear();
        program.remembered.add(
                new DeviceList.Remembered(new DeviceUse(setup, 3, 0, FakeProgram.NOW.minus(Duration.ofDays(40))), 45));
        assertThat(Ran.of(program, "probes").out())
                .as("not missed after a month")
                .isEmpty();
    }

    @Test
    void whatAnAdvertisementSaysOfItsBatteryIsRead() {
        // The open format's own example: packet number, battery 93 %, temperature and humidity.
        ByteText said = ByteText.ofHex("40 00 09 01 5D 02 5D 09 03 B7 18");
        UUID service = UUID.fromString("0000fcd2-0000-1000-8000-00805f9b34fb");
        program.inReach.add(new FoundProbe(
                new ProbeAddress("ble", "C0:FF:EE:00:00:01"),
                "Room",
                Optional.of(new Sighting.Radio("Room", List.of(service), List.of())),
                "C0:FF:EE:00:00:01",
                Optional.of(new Reception(
                        OptionalInt.empty(), 0, false, true, Double.NaN, Map.of(service, said), Map.of()))));
        assertThat(Ran.of(program, "probes").out()).contains("Room  heard 0 s ago, paired, battery 93 %\n  good\n");
    }

    @Test
    void whatCannotBeLookedForIsALineAndTheListIsPrinted() {
        program.inReach.add(usb("/dev/ttyUSB0", "Other", 1, 2));
        program.remarks.add("this computer has no Bluetooth adapter: plug one in");
        Ran ran = Ran.of(program, "probes");
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("/dev/ttyUSB0");
        assertThat(ran.err()).isEqualTo("this computer has no Bluetooth adapter: plug one in\n");
    }

    private Ran pair(String typed) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine line = new CommandLine(
                new ProbesCommand(program, new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8))));
        line.setOut(new PrintWriter(out));
        line.setErr(new PrintWriter(err));
        line.setExecutionExceptionHandler((failure, command, parsed) -> {
            err.append(failure.getMessage());
            return 4;
        });
        int code = line.execute("--pair", "C0:FF:EE:00:00:01");
        return new Ran(code, out.toString(), err.toString());
    }

    @Test
    void aPairingAsksThePersonAndTakesNothingButAClearYes() {
        Ran ran = pair("y\n123456\n");
        assertThat(ran.code()).isZero();
        assertThat(ran.err())
                .contains(
                        "Does Probe 1 show 000042? [y/N] ", "Type the number that Probe 1 shows", "paired with ble:C0");
        for (String typed : List.of("", "\n", "n\n", "yes please\n", "y\n", "y\nabc\n", "y\n1234567\n")) {
            Ran refused = pair(typed);
            assertThat(refused.code()).as(typed).isEqualTo(4);
            assertThat(refused.err())
                    .as(typed)
                    .contains("was not paired, as you chose")
                    .doesNotContain("paired with");
        }
    }

    @Test
    void aDeviceIsForgottenByItsAddress() {
        Ran ran = Ran.of(program, "probes", "--forget", "ble:C0:FF:EE:00:00:01@hci1");
        assertThat(ran).isEqualTo(new Ran(0, "", "forgot ble:C0:FF:EE:00:00:01@hci1\n"));
        assertThat(program.asked).containsExactly(new ProbeAddress("ble", "C0:FF:EE:00:00:01@hci1"));
        Ran bad = Ran.of(program, "probes", "--forget", "/dev/ttyUSB0");
        assertThat(bad.code()).isEqualTo(2);
        assertThat(bad.err()).contains("--forget must be a Bluetooth address such as");
        program.linkFault = new LinkException("this computer knows no device");
        assertThat(Ran.of(program, "probes", "--forget", "C0:FF:EE:00:00:01").code())
                .isEqualTo(4);
    }

    @Test
    void aFolderThatIsNotThereIsWrongUsage() {
        Ran ran = Ran.of(program, "probes", "--profiles", folder.resolve("none"));
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains("there is no folder");
    }
}
