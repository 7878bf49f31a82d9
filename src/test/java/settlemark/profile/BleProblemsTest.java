package settlemark.profile;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Complaints about a profile of a Bluetooth device with a characteristic and an advertisement; each case replaces one piece of it. */
final class BleProblemsTest {
    private static final ProblemCases CASES = new ProblemCases("""
            language: 1
            id: env
            name: Environment
            recognise:
              - ble: {name: "Probe", services: ["181A"], company: 0xFFFF}
            link: {ble: connected}
            start-up:
              - send: {characteristic: "2A57", hex: "01", acknowledged: true}
            messages:
              - id: pressure
                characteristic: {service: "181A", uuid: "2A6D", by: read, period: 2, presentation-format: true}
                fields:
                  - {name: kind, at: 0, type: uint8}
                  - {name: p, at: 1, type: uint32, when: {field: kind, is: 1}}
              - id: advert
                service-data: "FCD2"
                cipher: bthome-v2
                tagged: {at: 1, tag: uint8, lengths: {0x00: 1, 0x02: 2, 0x53: said}}
                fields:
                  - {name: t, tag: 0x02, type: int16}
                  - {name: words, tag: 0x53, type: utf8}
            channels:
              - {id: pressure, field: p, unit: Pa}
              - {id: t, field: t, unit: Cel}
            examples:
              - {hex: "01 00 00 00 00", gives: {pressure: 0}, presentation: "06 FF 24 27 01 00 00"}
              - {message: advert, hex: "40 02 CA 09", gives: {t: 25.06}, address: "54:48:E6:8F:80:A5", key: "231d39c1d7cc1ab1aee224cd096db932"}
            """);

    static Stream<Arguments> problems() {
        return Stream.of(
                ProblemCases.bad(
                        "{name: \"Probe\", services: [\"181A\"], company: 0xFFFF}",
                        "{}",
                        "5:10: ble must have at least one of name, services, company, got none"),
                ProblemCases.bad(
                        "services: [\"181A\"]",
                        "services: [\"181\"]",
                        "5:37: item 1 of services must be a UUID of 4, 8 or 32 hexadecimal digits in quotes, such as \"181A\", got \"181\""),
                ProblemCases.bad(
                        "services: [\"181A\"]",
                        "services: [2902]",
                        "5:37: item 1 of services must be a UUID of 4, 8 or 32 hexadecimal digits in quotes, such as \"181A\", got 2902 (quote it: \"2902\")"),
                ProblemCases.bad(
                        "services: [\"181A\"]",
                        "services: [0180]",
                        "5:37: item 1 of services must be a UUID of 4, 8 or 32 hexadecimal digits in quotes, such as \"181A\", got 0180 (quote it: \"0180\")"),
                ProblemCases.bad(
                        "company: 0xFFFF", "company: 0x10000", "5:55: company must be at most 65535, got 0x10000"),
                ProblemCases.bad(
                        "name: \"Probe\"",
                        "name: \"Probe(\"",
                        "5:17: name is no regular expression: missing closing ) in \"Probe(\""),
                ProblemCases.bad(
                        "  - ble: {name: \"Probe\", services: [\"181A\"], company: 0xFFFF}",
                        "  - serial: {vendor: 1}",
                        "5:13: recognition by serial needs the link serial or modbus-rtu, got ble: connected; remove one"),
                ProblemCases.bad(
                        "ble: connected",
                        "ble: advertising",
                        "8:28: characteristic needs the link ble: connected, got ble: advertising",
                        "11:21: characteristic needs the link ble: connected, got ble: advertising"),
                ProblemCases.bad(
                        "ble: connected",
                        "ble: conected",
                        "6:13: ble must be one of connected, advertising, got \"conected\"; did you mean connected?"),
                ProblemCases.bad(
                        "{characteristic: \"2A57\", hex: \"01\", acknowledged: true}",
                        "{hex: \"01\"}",
                        "8:11: send with text or hex alone needs the link serial, got ble: connected"),
                ProblemCases.bad(
                        "acknowledged: true}",
                        "acknowledged: false}\n    time-out: 1",
                        "9:15: time-out means nothing where no answer is awaited; add expect, or remove it"),
                ProblemCases.bad(
                        "acknowledged: true}",
                        "acknowledged: true}\n    expect: {hex: \"01\"}",
                        "9:13: expect needs the link serial, got ble: connected; remove it"),
                ProblemCases.bad(
                        "by: read",
                        "by: notify",
                        "11:73: period needs by: read; with notify the device decides when; remove it"),
                ProblemCases.bad(", by: read", "", "11:21: characteristic needs \"by\""),
                ProblemCases.bad(
                        "uuid: \"2A6D\"",
                        "uuid: \"2A6D-\"",
                        "11:45: uuid must be a UUID of 4, 8 or 32 hexadecimal digits in quotes, such as \"181A\", got \"2A6D-\""),
                ProblemCases.bad(
                        "service-data: \"FCD2\"",
                        "company-data: 0xFFFF",
                        "17:13: cipher bthome-v2 needs service-data, whose UUID is part of it; message \"advert\" has none"),
                ProblemCases.bad(
                        "service-data: \"FCD2\"",
                        "characteristic: {service: \"181A\", uuid: \"2a6d\", by: indicate}",
                        "16:21: message \"advert\" comes from where message \"pressure\" does; make one message of them, with when in its fields",
                        "17:13: cipher bthome-v2 needs service-data, whose UUID is part of it; message \"advert\" has none"),
                ProblemCases.bad(
                        "    service-data: \"FCD2\"\n",
                        "",
                        "15:5: message \"advert\" needs characteristic, service-data or company-data with the link ble"),
                ProblemCases.bad("    cipher: bthome-v2\n", "", "26:97: key needs a cipher in its message; remove it"),
                ProblemCases.bad(
                        "cipher: bthome-v2", "cipher: aes", "17:13: cipher must be one of bthome-v2, got \"aes\""),
                ProblemCases.bad(
                        "    tagged:",
                        "    framing: {line: {end: \"#\", maximum-bytes: 80}}\n    tagged:",
                        "18:14: each advertisement is one frame: use packet, or leave framing out",
                        "19:13: tagged needs a binary frame; remove it"),
                ProblemCases.bad(
                        "    tagged:",
                        "    framing: {idle-gap: {milliseconds: 20, maximum-bytes: 80}}\n    tagged:",
                        "18:14: idle-gap needs a serial line: radio keeps no time between its packets; use packet"),
                ProblemCases.bad(
                        "    tagged: {at: 1, tag: uint8, lengths: {0x00: 1, 0x02: 2, 0x53: said}}\n",
                        "",
                        "19:24: tag needs tagged: {...} in its message to say how tags and values follow each other",
                        "20:28: tag needs tagged: {...} in its message to say how tags and values follow each other"),
                ProblemCases.bad(
                        "lengths: {0x00: 1, 0x02: 2, 0x53: said}",
                        "length: uint8, lengths: {0x00: 1}",
                        "18:13: tagged must have exactly one of length, lengths, got both"),
                ProblemCases.bad(
                        "lengths: {0x00: 1, 0x02: 2, 0x53: said}",
                        "length: uint12",
                        "18:41: length must be one of uint8, uint16, uint24, uint32, got \"uint12\"; did you mean uint16?"),
                ProblemCases.bad(
                        ", lengths: {0x00: 1, 0x02: 2, 0x53: said}",
                        "",
                        "18:13: tagged must have exactly one of length, lengths, got none"),
                ProblemCases.bad(
                        "0x00: 1",
                        "0x100: 1",
                        "18:43: a tag must be a whole number of 8 bits, such as 0x02, got \"0x100\""),
                ProblemCases.bad(
                        "0x00: 1", "x: 1", "18:43: a tag must be a whole number of 8 bits, such as 0x02, got \"x\""),
                ProblemCases.bad("0x00: 1", "2: 1", "18:49: tag 0x02 stands twice; keep one"),
                ProblemCases.bad(
                        "0x00: 1", "0x00: some", "18:49: 0x00 must be a number of bytes, or said, got \"some\""),
                ProblemCases.bad("0x00: 1", "0x00: -1", "18:49: 0x00 must be at least 0, got -1"),
                ProblemCases.bad(
                        "at: 1, tag: uint8",
                        "at: 300, tag: uint8",
                        "18:13: at must lie within the longest frame, which has room for 255 bytes, got 300"),
                ProblemCases.bad(
                        "tag: 0x02, type: int16",
                        "tag: 0x03, type: int16",
                        "20:24: tag 3 must have a length under tagged: lengths"),
                ProblemCases.bad(
                        "tag: 0x02, type: int16",
                        "tag: 0x102, type: int16",
                        "20:24: tag must fit the 8 bits of a tag, got 258"),
                ProblemCases.bad(
                        "tag: 0x02, type: int16",
                        "tag: 0x02, type: int24",
                        "20:24: the field ends at byte 3 of its value, which has 2"),
                ProblemCases.bad(
                        "tag: 0x02, type: int16",
                        "tag: 0x02, at: 1, type: int16",
                        "20:34: the field ends at byte 3 of its value, which has 2"),
                ProblemCases.bad(
                        "tag: 0x02, type: int16",
                        "tag: 0x02, type: text",
                        "20:36: type text needs column or pattern rather than tag"),
                ProblemCases.bad(
                        "tag: 0x02, type: int16",
                        "tag: 0x02, column: 1, type: int16",
                        "20:9: field \"t\" must have exactly one of at, column, pattern, register, tag, got column and tag"),
                ProblemCases.bad(
                        "{name: kind, at: 0, type: uint8}",
                        "{name: kind, at: 0, type: float32}",
                        "14:54: field \"kind\" is no integer in bytes; when needs one such as uint8"),
                ProblemCases.bad(
                        "{name: kind, at: 0, type: uint8}",
                        "{name: kind, at: 0, type: uint8, when: {field: p, is: 1}}",
                        "13:56: field \"p\" has a when itself; name a field that stands in every frame",
                        "14:54: field \"kind\" has a when itself; name a field that stands in every frame"),
                ProblemCases.bad(
                        "{field: kind, is: 1}",
                        "{field: kind, is: 256}",
                        "14:64: is must be a whole number of 8 bits, got 256"),
                ProblemCases.bad(
                        "{field: kind, is: 1}",
                        "{field: kind, is: [1, -1]}",
                        "14:64: is must be a whole number of 8 bits, got -1"),
                ProblemCases.bad(
                        "{field: kind, is: 1}",
                        "{field: kind, is: one}",
                        "14:64: is must be a whole number or a list of them, got \"one\""),
                ProblemCases.bad(
                        "{field: kind, is: 1}",
                        "{field: knid, is: 1}",
                        "14:54: no field of the same message is called \"knid\"; did you mean \"kind\"?"),
                ProblemCases.bad(
                        "{field: kind, is: 1}",
                        "{field: t, is: 1}",
                        "14:54: no field of the same message is called \"t\"; there are kind, p"),
                ProblemCases.bad("{field: kind, is: 1}", "{field: kind}", "14:46: when needs \"is\""),
                ProblemCases.bad(
                        "{field: kind, is: 1}",
                        "{field: p, is: 1}",
                        "14:54: field \"p\" has a when itself; name a field that stands in every frame"),
                ProblemCases.bad(
                        "field: t, unit",
                        "field: [t, p], unit",
                        "24:20: the fields of a channel must stand in one message, got t, p"),
                ProblemCases.bad(
                        "presentation: \"06 FF 24 27 01 00 00\"",
                        "presentation: \"06 FF\"",
                        "26:65: presentation must have 7 bytes, got 2"),
                ProblemCases.bad(
                        "presentation: \"06 FF 24 27 01 00 00\"",
                        "presentation: \"06 F\"",
                        "26:65: presentation must be pairs of hexadecimal digits, such as \"A5 5A\", got \"06 F\""),
                ProblemCases.bad(
                        "presentation: \"06 FF 24 27 01 00 00\"",
                        "measurement: \"00 00 01 00 00 00 00 00 00 01 FF\"",
                        "26:64: measurement needs characteristic: {measurement: true} in its message; remove it"),
                ProblemCases.bad(
                        "address: \"54:48:E6:8F:80:A5\", ",
                        "",
                        "27:67: key needs address beside it: the address of the device is part of the cipher"),
                ProblemCases.bad(
                        "address: \"54:48:E6:8F:80:A5\"",
                        "address: \"54:48\"",
                        "27:71: address must be a device address such as \"54:48:E6:8F:80:A5\", got \"54:48\""),
                ProblemCases.bad(
                        "\"231d39c1d7cc1ab1aee224cd096db932\"",
                        "\"231d39c1d7cc1ab1aee224cd096db9\"",
                        "27:97: key must be 16 bytes as 32 hexadecimal digits in quotes, got a value that is not shown here"),
                ProblemCases.bad(
                        "\"231d39c1d7cc1ab1aee224cd096db932\"",
                        "23133931373313313332243309639932",
                        "27:97: key must be 16 bytes as 32 hexadecimal digits in quotes, got a value that is not shown here"),
                ProblemCases.bad(
                        "\"231d39c1d7cc1ab1aee224cd096db932\"",
                        "231339313733133133322433096e9932",
                        "27:97: number of 32 characters is too large; quote it if it is text"),
                ProblemCases.bad(
                        "\"231d39c1d7cc1ab1aee224cd096db932\"",
                        "[231d39c1d7cc1ab1aee224cd096db932]",
                        "27:97: key must be 16 bytes as 32 hexadecimal digits in quotes, got a value that is not shown here"),
                ProblemCases.bad(
                        "      - {name: kind, at: 0, type: uint8}\n      - {name: p, at: 1, type: uint32, when: {field: kind, is: 1}}",
                        "      - {name: p, at: 0, type: utf8}",
                        "11:21: presentation-format needs a number in bytes among the fields; remove it",
                        "22:27: field \"p\" holds words, a channel needs a number; use it under facts"),
                ProblemCases.bad(
                        "  - id: pressure\n    characteristic",
                        "  - id: pressure\n    framing: {line: {end: \"#\", maximum-bytes: 9}}\n    characteristic",
                        "14:26: at needs a binary frame; use column or pattern in a line",
                        "15:23: at needs a binary frame; use column or pattern in a line"),
                ProblemCases.bad(
                        "service-data: \"FCD2\"",
                        "service-data: \"FCD\"",
                        "16:19: service-data must be a UUID of 4, 8 or 32 hexadecimal digits in quotes, such as \"181A\", got \"FCD\""),
                ProblemCases.bad(
                        "service-data: \"FCD2\"",
                        "service-data: \"FCD2\"\n    company-data: 1",
                        "17:19: message \"advert\" must have at most one of ask, characteristic, service-data, company-data, got service-data and company-data"),
                ProblemCases.bad(
                        "message: advert, hex",
                        "message: pressure, hex",
                        "27:56: channel \"t\" comes from another message than this example's; name it under message",
                        "27:99: key needs a cipher in its message; remove it"));
    }

    @ParameterizedTest
    @MethodSource
    void problems(String from, String to, List<String> expected) {
        CASES.check(from, to, expected);
    }

    @Test
    void theUnchangedProfileHasNone() {
        CASES.checkUnchanged();
    }

    static Stream<Arguments> good() {
        return Stream.of(
                Arguments.of("\"231d39c1d7cc1ab1aee224cd096db932\"", "\"231d39c1d7cc1ab1aee224cd096db932\\n\""),
                Arguments.of("lengths: {0x00: 1, 0x02: 2, 0x53: said}", "length: uint8"),
                Arguments.of("{0x00: 1, 0x02: 2, 0x53: said}", "{0x00: 1, 2: 2, 83: said}"));
    }

    @ParameterizedTest
    @MethodSource
    void good(String from, String to) {
        CASES.check(from, to, List.of());
    }
}
