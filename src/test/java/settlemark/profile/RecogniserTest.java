package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

final class RecogniserTest {
    private static final UUID ENVIRONMENT = UUID.fromString("0000181a-0000-1000-8000-00805f9b34fb");
    private static final UUID OWN = UUID.fromString("12345678-9abc-def0-1234-56789abcdef0");

    private static Profile profile(String recognise) {
        return ReadProfiles.read("""
                language: 1
                id: x
                name: X
                %s
                framing: {line: {end: "#", maximum-bytes: 20}}
                fields: [{name: x, pattern: "(.)", type: text}]
                channels: [{id: x, field: x, unit: Pa}]
                examples: [{text: "1#", gives: {x: 1}}]
                """.formatted(recognise));
    }

    private static final Profile SERIAL = profile("""
            recognise:
              - serial: {description: "bench (gauge|meter)", vendor: 0x1209, product: 1}
              - serial: {description: "lab"}""");

    private static final Profile BLE = profile("""
            recognise:
              - ble: {name: "^Probe", services: ["181A", "12345678-9abc-def0-1234-56789abcdef0"], company: 0xFFFF}""");

    private static Sighting.Port port(String description, @Nullable Integer vendor, @Nullable Integer product) {
        return new Sighting.Port(description, Optional.ofNullable(vendor), Optional.ofNullable(product));
    }

    static Stream<Arguments> ports() {
        return Stream.of(
                Arguments.of(
                        port("My bench gauge", 0x1209, 1),
                        new Match.Fits("description \"My bench gauge\", USB vendor 0x1209, USB product 0x0001")),
                Arguments.of(port("the lab's", null, null), new Match.Fits("description \"the lab's\"")),
                Arguments.of(
                        port("bench meter", 0x1209, 2),
                        new Match.Differs(List.of(
                                "USB product is 0x0002, not 0x0001",
                                "description \"bench meter\" does not fit \"lab\""))),
                Arguments.of(
                        port("", null, null),
                        new Match.Differs(List.of(
                                "it has no description; \"bench (gauge|meter)\" is looked for",
                                "it has no USB vendor number; 0x1209 is looked for",
                                "it has no USB product number; 0x0001 is looked for",
                                "it has no description; \"lab\" is looked for"))),
                Arguments.of(
                        port("\u001b[31mother", 0x403, 1),
                        new Match.Differs(List.of(
                                "description \"?[31mother\" does not fit \"bench (gauge|meter)\"",
                                "USB vendor is 0x0403, not 0x1209",
                                "description \"?[31mother\" does not fit \"lab\""))),
                Arguments.of(
                        new Sighting.Radio("bench gauge", List.of(), List.of()),
                        new Match.Differs(
                                List.of("it is recognised as a serial port, and this is a Bluetooth device"))));
    }

    @ParameterizedTest
    @MethodSource
    void ports(Sighting seen, Match expected) {
        assertThat(Recogniser.match(SERIAL, seen)).isEqualTo(expected);
    }

    static Stream<Arguments> radios() {
        return Stream.of(
                Arguments.of(
                        new Sighting.Radio("Probe 7", List.of(OWN, ENVIRONMENT), List.of(1, 0xFFFF)),
                        new Match.Fits("name \"Probe 7\", service 181A,"
                                + " service 12345678-9ABC-DEF0-1234-56789ABCDEF0, company 0xFFFF")),
                Arguments.of(
                        new Sighting.Radio("Probe 7", List.of(ENVIRONMENT), List.of(1)),
                        new Match.Differs(List.of(
                                "service 12345678-9ABC-DEF0-1234-56789ABCDEF0 is not advertised; 181A is",
                                "data of company 0xFFFF is not advertised; 0x0001 is"))),
                Arguments.of(
                        new Sighting.Radio(
                                "My Probe",
                                List.of(new UUID(0x12345678_0000_1000L, OWN.getLeastSignificantBits()), OWN),
                                List.of(1, 2)),
                        new Match.Differs(List.of(
                                "name \"My Probe\" does not fit \"^Probe\"",
                                "service 181A is not advertised; 12345678-0000-1000-1234-56789ABCDEF0,"
                                        + " 12345678-9ABC-DEF0-1234-56789ABCDEF0 are",
                                "data of company 0xFFFF is not advertised; 0x0001, 0x0002 are"))),
                Arguments.of(
                        new Sighting.Radio(
                                "",
                                List.of(new UUID(0x0000181A_0000_2000L, ENVIRONMENT.getLeastSignificantBits())),
                                List.of()),
                        new Match.Differs(List.of(
                                "it has no name; \"^Probe\" is looked for",
                                "service 181A is not advertised; 0000181A-0000-2000-8000-00805F9B34FB is",
                                "service 12345678-9ABC-DEF0-1234-56789ABCDEF0 is not advertised;"
                                        + " 0000181A-0000-2000-8000-00805F9B34FB is",
                                "data of company 0xFFFF is not advertised; none of any company is"))),
                Arguments.of(
                        new Sighting.Radio("Probe", List.of(), List.of(0xFFFF)),
                        new Match.Differs(List.of(
                                "service 181A is not advertised; no service is",
                                "service 12345678-9ABC-DEF0-1234-56789ABCDEF0 is not advertised; no service is"))),
                Arguments.of(
                        port("Probe", 1, 1),
                        new Match.Differs(
                                List.of("it is recognised by Bluetooth advertisements, and this is a serial port"))));
    }

    @ParameterizedTest
    @MethodSource
    void radios(Sighting seen, Match expected) {
        assertThat(Recogniser.match(BLE, seen)).isEqualTo(expected);
    }

    @Test
    void aProfileWithoutMarksSaysSo() {
        assertThat(Recogniser.match(profile(""), port("x", 1, 1)))
                .isEqualTo(new Match.Differs(List.of("the profile does not say how the device is recognised; choose it"
                        + " by hand, or add recognise to it")));
    }

    @Test
    void theSameReasonIsSaidOnce() {
        Profile twice = profile("recognise: [{serial: {vendor: 1, product: 1}}, {serial: {vendor: 1, product: 2}}]");
        assertThat(Recogniser.match(twice, port("x", 3, 3)))
                .isEqualTo(new Match.Differs(List.of(
                        "USB vendor is 0x0003, not 0x0001",
                        "USB product is 0x0003, not 0x0001",
                        "USB product is 0x0003, not 0x0002")));
    }

    @Test
    void whatDiffersHasAReason() {
        assertThatThrownBy(() -> new Match.Differs(List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("what differs has a reason");
    }
}
