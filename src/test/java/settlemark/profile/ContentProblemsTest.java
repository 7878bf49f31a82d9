package settlemark.profile;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Complaints about a profile of a serial device: its fields, channels, facts and examples; each case replaces one piece of it. */
final class ContentProblemsTest {
    private static final ProblemCases CASES = new ProblemCases(ProblemCases.SERIAL);

    static Stream<Arguments> problems() {
        return Stream.of(
                ProblemCases.bad(
                        "{name: q, column",
                        "{name: p, column",
                        "22:16: field \"p\" stands twice; give each its own name"),
                ProblemCases.bad(
                        "{name: serial, pat",
                        "{name: p, pat",
                        "27:16: field \"p\" stands twice; give each its own name",
                        "31:32: no field is called \"serial\"; there are p, q"),
                ProblemCases.bad(
                        "type: utf8",
                        "type: utf8, length: 3",
                        "27:64: length means nothing in a column or a pattern, which end by themselves; remove it"),
                ProblemCases.bad(
                        "type: utf8", "type: utf8, scale: 2", "27:63: scale means nothing for type utf8; remove it"),
                ProblemCases.bad(
                        "type: utf8",
                        "type: utf8, when: {field: p, is: 1}",
                        "27:70: no field of the same message is called \"p\"; there are serial"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, when: {field: p, is: 1}",
                        "22:56: field \"p\" is no integer in bytes; when needs one such as uint8"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, register: 5",
                        "22:9: field \"q\" must have exactly one of at, column, pattern, register, tag, got column and register"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, nth: 1",
                        "22:47: nth needs tag: it says which of several values with the same tag; remove it"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "register: 5, type: uint16",
                        "22:29: register needs ask: {function: 3, register: ..., count: ...} in its message"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "tag: 5, type: uint16",
                        "22:24: tag needs tagged: {...} in its message to say how tags and values follow each other"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, table: [[0, 0], [1, 1]], scale: 2",
                        "22:49: a field must have at most one of scale with offset, polynomial, table, got scale and table"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, table: [[0, 0], [0, 1]]",
                        "22:58: raw numbers of a table must rise, got 0.0 after 0.0"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, table: [[0, 0], [1, 1], [2, 0.5]]",
                        "22:66: values of a table must rise or fall all the way, got 0.5 after 1.0"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, table: [[0, 0], [1, -1], [2, -1]]",
                        "22:67: values of a table must rise or fall all the way, got -1.0 after -1.0"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, table: [[0, 0]]",
                        "22:49: table must have at least 2 in its list, got 1"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, table: [[0, 0], 1]",
                        "22:58: item 2 of table must be a point [number, value], got 1 (write a list: [1])"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, table: [[0, 0], [1, 1, 1]]",
                        "22:58: item 2 of table must have at most 2 in its list, got 3"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, polynomial: [1]",
                        "22:54: polynomial must have at least 2 in its list, got 1"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, polynomial: [1, 2], offset: 1",
                        "22:54: a field must have at most one of scale with offset, polynomial, table, got offset and polynomial"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, polynomial: [1, 2], table: [[0, 0], [1, 1]]",
                        "22:69: a field must have at most one of scale with offset, polynomial, table, got polynomial and table"),
                ProblemCases.bad(
                        "column: 1, type: text",
                        "column: 1, type: text, polynomial: [1, \"x\"]",
                        "22:58: item 2 of polynomial must be a number, got \"x\""),
                ProblemCases.bad(
                        "field: p,",
                        "field: serial,",
                        "29:27: field \"serial\" holds words, a channel needs a number; use it under facts"),
                ProblemCases.bad(
                        "field: p,",
                        "field: [p, serial],",
                        "29:27: field \"serial\" holds words, a channel needs a number; use it under facts"),
                ProblemCases.bad(
                        "field: p,", "field: [p, r],", "29:27: no field is called \"r\"; there are p, q, serial"),
                ProblemCases.bad(
                        "field: p,",
                        "field: presure,",
                        "29:27: no field is called \"presure\"; there are p, q, serial"),
                ProblemCases.bad("field: p,", "field: [],", "29:27: field must have at least 1 in its list, got 0"),
                ProblemCases.bad(
                        "field: p,",
                        "field: 5,",
                        "29:27: field must be the name of a field, or a list of names, got 5 (quote it: \"5\")"),
                ProblemCases.bad(
                        "unit: Pa}",
                        "unit: Pa, accuracy: {digits: 1}}",
                        "29:59: digits needs resolution in its channel: how much one digit is"),
                ProblemCases.bad("unit: Pa}", "unit: Pa, warm-up: -1}", "29:49: warm-up must be at least 0, got -1"),
                ProblemCases.bad(
                        "field: serial}", "field: p}", "31:32: field \"p\" is not of type utf8, which a fact needs"),
                ProblemCases.bad(
                        "field: serial}",
                        "field: sreial}",
                        "31:32: no field is called \"sreial\"; did you mean \"serial\"?"),
                ProblemCases.bad(
                        "  - {id: serial-number, field: serial}",
                        "  - {id: serial-number, field: serial}\n  - {id: serial-number, field: serial}",
                        "32:10: fact \"serial-number\" stands twice; give each its own id"),
                ProblemCases.bad(
                        "channels:\n  - {id: pressure, field: p, unit: Pa}\nfacts:\n  - {id: serial-number, field: serial}\n",
                        "",
                        "1:1: the profile needs \"channels\" or \"facts\": what it is for",
                        "29:40: no channel is called \"pressure\"; there are none",
                        "30:63: no fact is called \"serial-number\"; there are none"),
                ProblemCases.bad(
                        "message: identity",
                        "message: identiy",
                        "34:15: no message is called \"identiy\"; did you mean \"identity\"?"),
                ProblemCases.bad(
                        "message: identity",
                        "message: reading",
                        "34:62: fact \"serial-number\" comes from another message than this example's; name it under message"),
                ProblemCases.bad(
                        "{message: identity, ",
                        "{",
                        "34:44: fact \"serial-number\" comes from another message than this example's; name it under message"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "gives: {pressure: absent}",
                        "33:29: example 1 must give something beside what is absent: it would prove nothing"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "gives: {presure: 1}",
                        "33:39: no channel is called \"presure\"; did you mean \"pressure\"?"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "rejected: columns, facts: {serial-number: x}",
                        "33:48: a rejected frame gives no facts; remove one of facts, rejected"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "rejected: columns, gives: {pressure: 1}",
                        "33:5: example 1 must have exactly one of gives, rejected, got both"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "gives: {pressure: 1.5}, key: \"231d39c1d7cc1ab1aee224cd096db932\"",
                        "33:51: key needs a cipher in its message; remove it"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "gives: {pressure: 1.5}, address: \"54:48:E6:8F:80:A5\"",
                        "33:55: address needs a cipher in its message; remove it"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "gives: {pressure: 1.5}, presentation: \"06 FF 24 27 01 00 00\"",
                        "33:60: presentation needs characteristic: {presentation-format: true} in its message; remove it"),
                ProblemCases.bad(
                        "gives: {pressure: 1.5}",
                        "gives: {pressure: 1.5}, measurement: \"06 FF 24 27 01 00 00\"",
                        "33:59: measurement needs characteristic: {measurement: true} in its message; remove it"),
                ProblemCases.bad(
                        "facts: {serial-number: \"7\"}",
                        "facts: {serial: \"7\"}",
                        "34:56: no fact is called \"serial\"; there are serial-number"),
                ProblemCases.bad(
                        "facts: {serial-number: \"7\"}",
                        "facts: {serial-number: 7}",
                        "34:63: serial-number must be text, got 7 (quote it: \"7\")"),
                ProblemCases.bad(
                        "facts: {serial-number: \"7\"}",
                        "facts: {}",
                        "34:47: facts must have at least 1 entries, got 0"),
                ProblemCases.bad(
                        "    fields:\n      - {name: serial, pattern: \"SN=(.*)\", type: utf8}\n",
                        "",
                        "23:5: message \"identity\" needs \"fields\"",
                        "29:32: no field is called \"serial\"; there are p, q"),
                ProblemCases.bad(
                        "  - id: identity\n",
                        "  - 5\n  - id: identity\n",
                        "23:5: item 2 of messages must be a mapping of keys to values, got 5"),
                ProblemCases.bad(
                        "    ask: {text: \"MEAS?\", period: 0.5}\n    framing: {line: {end: \"#\", maximum-bytes: 80}}\n    columns: {separator: \",\"}\n    fields:\n      - {name: p, column: 0, type: text}\n      - {name: q, column: 1, type: text}\n  - id: identity\n    ask: {text: \"IDN?\"}",
                        "    framing: {line: {end: \"#\", maximum-bytes: 80}}\n    columns: {separator: \",\"}\n    fields:\n      - {name: p, column: 0, type: text}\n      - {name: q, column: 1, type: text}\n  - id: identity",
                        "22:5: message \"identity\" comes unasked as message \"reading\" does: nothing tells them apart; make one message of them, with when in its fields"),
                ProblemCases.bad(
                        "  - {text: \"1.5,2#\", gives: {pressure: 1.5}}",
                        "  - {gives: {pressure: 1.5}}",
                        "33:5: example 1 must have exactly one of hex, text, got none"),
                ProblemCases.bad(
                        "  - {text: \"1.5,2#\", gives: {pressure: 1.5}}",
                        "  - {text: \"1#\"}",
                        "33:5: example 1 must have exactly one of gives, rejected, got none"),
                ProblemCases.bad(
                        "  - {text: \"1.5,2#\", gives: {pressure: 1.5}}",
                        "  - {hex: \"1\", gives: {pressure: 1.5}}",
                        "33:11: hex must be pairs of hexadecimal digits, such as \"A5 5A\", got \"1\""));
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
}
