package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Sighting;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost.FoundProbe;
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

    @Test
    void aFolderThatIsNotThereIsWrongUsage() {
        Ran ran = Ran.of(program, "probes", "--profiles", folder.resolve("none"));
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains("there is no folder");
    }
}
