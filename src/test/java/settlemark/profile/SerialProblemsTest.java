package settlemark.profile;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Complaints about a profile of a serial device: how it is recognised and connected, its start-up, actions and messages; each case replaces one piece of it. */
final class SerialProblemsTest {
    private static final ProblemCases CASES = new ProblemCases(ProblemCases.SERIAL);

    static Stream<Arguments> problems() {
        return Stream.of(
                ProblemCases.bad(
                        "{description: \"bench gauge\", vendor: 0x1209, product: 0x0001}",
                        "{}",
                        "5:13: serial must have at least one of description, vendor, product, got none"),
                ProblemCases.bad(
                        "vendor: 0x1209", "vendor: 0x12090", "5:50: vendor must be at most 65535, got 0x12090"),
                ProblemCases.bad("product: 0x0001", "product: -1", "5:67: product must be at least 0, got -1"),
                ProblemCases.bad(
                        "description: \"bench gauge\"",
                        "description: \"bench [\"",
                        "5:27: description is no regular expression: missing closing ] in \"[\""),
                ProblemCases.bad(
                        "description: \"bench gauge\"",
                        "description: \"((a{1000}){1000})\"",
                        "5:27: description is too large: its counted repetitions would fill the memory; use smaller counts, and no \\Q"),
                ProblemCases.bad(
                        "  - serial: {description: \"bench gauge\", vendor: 0x1209, product: 0x0001}",
                        "  - ble: {name: \"x\"}",
                        "5:10: recognition by ble needs the link ble, got serial; remove one"),
                ProblemCases.bad(
                        "  serial: {baud: 9600}",
                        "  ble: connected",
                        "5:13: recognition by serial needs the link serial or modbus-rtu, got ble: connected; remove one",
                        "9:11: send with text or hex alone needs the link serial, got ble: connected",
                        "10:13: expect needs the link serial, got ble: connected; remove it",
                        "14:20: send with text or hex alone needs the link serial, got ble: connected",
                        "17:10: ask with text or hex needs the link serial, got ble: connected",
                        "24:10: ask with text or hex needs the link serial, got ble: connected"),
                ProblemCases.bad(
                        "  serial: {baud: 9600}",
                        "  serial: {baud: 9600}\n  ble: connected",
                        "7:3: link must have exactly one of serial, modbus-rtu, ble, got serial and ble"),
                ProblemCases.bad(
                        "link:\n  serial: {baud: 9600}\n",
                        "",
                        "7:11: send with text or hex alone needs the link serial, got no link",
                        "8:13: expect needs the link serial, got no link; remove it",
                        "12:20: send with text or hex alone needs the link serial, got no link",
                        "15:10: ask with text or hex needs the link serial, got no link",
                        "22:10: ask with text or hex needs the link serial, got no link"),
                ProblemCases.bad(
                        "    expect: {text: \"OK\"}\n",
                        "",
                        "10:15: time-out means nothing where no answer is awaited; add expect, or remove it"),
                ProblemCases.bad(
                        "    expect: {text: \"OK\"}\n    time-out: 2",
                        "    retries: 2",
                        "10:14: retries means nothing where no answer is awaited; add expect, or remove it"),
                ProblemCases.bad(
                        "  - send: {text: \"CLS\"}\n",
                        "  - retries: 1\n",
                        "9:14: retries needs send: there is nothing to send again; remove it"),
                ProblemCases.bad(
                        "  - send: {text: \"CLS\"}\n    expect: {text: \"OK\"}\n    time-out: 2",
                        "  - {}",
                        "9:5: a step must have at least one of send, expect, wait, got none"),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{text: \"CLS\", hex: \"01\"}",
                        "9:11: send must have exactly one of text, hex, register, got text and hex"),
                ProblemCases.bad(
                        "{text: \"CLS\"}", "{}", "9:11: send must have exactly one of text, hex, register, got none"),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{hex: \"0\"}",
                        "9:17: hex must be pairs of hexadecimal digits, such as \"A5 5A\", got \"0\""),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{text: \"CLS\", acknowledged: true}",
                        "9:39: acknowledged needs characteristic beside it"),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{register: 1}",
                        "9:11: send needs \"values\" too: {register: 10, values: [1]}"),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{values: [1], text: \"x\"}",
                        "9:31: text means nothing beside register and values; remove it"),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{register: 1, values: [1]}",
                        "9:22: register needs the link modbus-rtu, got serial"),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{characteristic: \"2A57\", hex: \"01\"}",
                        "9:28: characteristic needs the link ble: connected, got serial"),
                ProblemCases.bad(
                        "{text: \"CLS\"}",
                        "{characteristic: \"2A57\"}",
                        "9:11: send must have exactly one of text, hex, got none"),
                ProblemCases.bad(
                        "{text: \"OK\"}",
                        "{text: \"OK\", pattern: \"x\"}",
                        "10:13: expect must have exactly one of text, hex, pattern, got text and pattern"),
                ProblemCases.bad(
                        "{text: \"OK\"}", "{}", "10:13: expect must have exactly one of text, hex, pattern, got none"),
                ProblemCases.bad(
                        "{text: \"OK\"}",
                        "{pattern: \"(OK\"}",
                        "10:23: pattern is no regular expression: missing closing ) in \"(OK\""),
                ProblemCases.bad(
                        "{text: \"OK\"}",
                        "{hex: \"4F4\"}",
                        "10:19: hex must be pairs of hexadecimal digits, such as \"A5 5A\", got \"4F4\""),
                ProblemCases.bad("time-out: 2", "time-out: 0", "11:15: time-out must be more than 0, got 0"),
                ProblemCases.bad("wait: 1", "wait: -1", "14:39: wait must be at least 0, got -1"),
                ProblemCases.bad(
                        "[{send: {hex: \"5A\"}, wait: 1}]",
                        "[]",
                        "14:12: steps must have at least 1 in its list, got 0"),
                ProblemCases.bad(
                        "  - id: zero\n",
                        "  - id: zero\n    steps: [{wait: 1}]\n  - id: zero\n",
                        "15:9: action \"zero\" stands twice; give each its own id"),
                ProblemCases.bad("  - id: zero\n", "  - ", "13:9: item 1 of actions needs \"id\""),
                ProblemCases.bad(
                        "  - id: identity",
                        "  - id: reading",
                        "23:9: message \"reading\" stands twice; give each its own id",
                        "34:15: no message is called \"identity\"; there are reading"),
                ProblemCases.bad(
                        "messages:\n",
                        "checksum: {xor: {width: 8}}\nmessages:\n",
                        "15:1: checksum stands in each message where there are messages; move it there"),
                ProblemCases.bad(
                        "{text: \"MEAS?\", period: 0.5}",
                        "{text: \"MEAS?\", hex: \"01\"}",
                        "17:10: ask must have exactly one of text, hex, function, got text and hex"),
                ProblemCases.bad(
                        "{text: \"MEAS?\", period: 0.5}",
                        "{period: 1}",
                        "17:10: ask must have exactly one of text, hex, function, got none"),
                ProblemCases.bad(
                        "{text: \"MEAS?\", period: 0.5}",
                        "{hex: \"0\"}",
                        "17:16: hex must be pairs of hexadecimal digits, such as \"A5 5A\", got \"0\""),
                ProblemCases.bad(
                        "{text: \"MEAS?\", period: 0.5}",
                        "{text: \"MEAS?\", register: 1}",
                        "17:36: register needs function beside it, 3 or 4; a text or hex is sent as it is"),
                ProblemCases.bad(
                        "{text: \"MEAS?\", period: 0.5}",
                        "{function: 3, register: 0, count: 1}",
                        "17:10: ask with function needs the link modbus-rtu, got serial"),
                ProblemCases.bad(
                        "{text: \"MEAS?\", period: 0.5}",
                        "{text: \"MEAS?\", period: 0}",
                        "17:34: period must be more than 0, got 0"),
                ProblemCases.bad(
                        "{text: \"MEAS?\", period: 0.5}",
                        "{text: \"MEAS?\", retries: 1.5}",
                        "17:35: retries must be a whole number, got 1.5"),
                ProblemCases.bad(
                        "{text: \"IDN?\"}",
                        "{text: \"IDN?\"}\n    company-data: 0xFFFF",
                        "25:19: message \"identity\" must have at most one of ask, characteristic, service-data, company-data, got ask and company-data"),
                ProblemCases.bad(
                        "    ask: {text: \"IDN?\"}\n",
                        "    company-data: 0xFFFF\n",
                        "24:19: company-data needs the link ble: advertising or ble: connected, got serial"),
                ProblemCases.bad(
                        "    ask: {text: \"IDN?\"}\n",
                        "    service-data: \"FCD2\"\n",
                        "24:19: service-data needs the link ble: advertising or ble: connected, got serial"),
                ProblemCases.bad(
                        "    ask: {text: \"IDN?\"}\n",
                        "    characteristic: {uuid: \"2A6D\", by: notify}\n",
                        "24:21: characteristic needs the link ble: connected, got serial"),
                ProblemCases.bad(
                        "    ask: {text: \"MEAS?\", period: 0.5}\n    framing: {line: {end: \"#\", maximum-bytes: 80}}",
                        "    framing: {packet: {maximum-bytes: 20}}",
                        "17:14: packet needs a characteristic, service-data or company-data: a serial line has no packets",
                        "18:14: columns need the framing line; remove them",
                        "20:9: a column or a pattern needs the framing line; use at for the offset in a binary frame",
                        "21:9: a column or a pattern needs the framing line; use at for the offset in a binary frame"),
                ProblemCases.bad(
                        "    framing: {line: {end: \"#\", maximum-bytes: 80}}\n    fields",
                        "    fields",
                        "23:5: message \"identity\" needs \"framing\": how its bytes are cut into frames"),
                ProblemCases.bad(
                        "    framing: {line: {end: \"#\", maximum-bytes: 80}}\n    fields",
                        "    framing: {idle-gap: {milliseconds: 0.5, maximum-bytes: 20}}\n    fields",
                        "25:40: milliseconds must be at least 1, got 0.5"));
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
        return Stream.of(Arguments.of("    ask: {text: \"IDN?\"}\n", ""));
    }

    @ParameterizedTest
    @MethodSource
    void good(String from, String to) {
        CASES.check(from, to, List.of());
    }
}
