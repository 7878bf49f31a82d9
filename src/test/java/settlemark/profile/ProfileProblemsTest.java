package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.document.Problem;

/** Every complaint about a profile, as the person sees it. */
final class ProfileProblemsTest {
    /** A good binary profile; each case replaces one piece of it. */
    private static final String BINARY = """
            language: 1
            id: bench
            name: Bench
            link:
              serial: {baud: 9600}
            framing:
              length-field: {start: "A5", at: 1, type: uint8, adds: 3, maximum-bytes: 16}
            checksum:
              crc: {width: 16, poly: 0x1021, init: 0, refin: false, refout: false, xorout: 0}
            fields:
              - {name: t1, at: 2, type: int16, scale: 0.01}
            channels:
              - id: one
                field: t1
                unit: Cel
            examples:
              - {hex: "A5 02 01 00 3C 92", gives: {one: 0.01}}
            """;

    /** A good profile of text lines. */
    private static final String LINES = """
            language: 1
            id: bench
            name: Bench
            framing:
              line: {end: "\\n", maximum-bytes: 40}
            columns: {separator: " ", count: 2}
            fields:
              - {name: p, column: 0, type: text}
            channels:
              - id: one
                field: p
                unit: "[psi]"
            examples:
              - {text: "1 x\\n", gives: {one: 1}}
            """;

    static Stream<Arguments> binary() {
        return Stream.of(
                bad("scale: 0.01", "scale: 0,1", "11:45: unknown key \"1\"; a decimal comma before it? Use a point"),
                bad("scale: 0.01", "scale: \"0,1\"", "11:43: scale must be a number, got \"0,1\" (use a point)"),
                bad("scale: 0.01", "scale: \"0.1\"", "11:43: scale must be a number, got \"0.1\" (without quotes)"),
                bad(
                        "scale: 0.01",
                        "scale: 0.01 Cel",
                        "11:43: scale must be a number, got \"0.01 Cel\" (the number alone, without its unit)"),
                bad("scale: 0.01", "scale: 0", "11:43: scale must not be 0: every value would be the offset"),
                bad(
                        "unit: Cel",
                        "unit: [psi]",
                        "15:11: unit is read as a list because of its square brackets; quote it: unit: \"[psi]\""),
                bad("unit: Cel", "unit: 5", "15:11: unit must be text, got 5 (quote it: \"5\")"),
                bad("unit: Cel", "unit: C", "15:11: unit must be a UCUM code, got \"C\"; did you mean \"Cel\"?"),
                bad(
                        "unit: Cel",
                        "unit: inH2O",
                        "15:11: unit must be a UCUM code, got \"inH2O\"; did you mean \"[in_i'H2O]\"?"),
                bad(
                        "unit: Cel",
                        "unit: bogus",
                        "15:11: unit must be a UCUM code without annotation, such as \"Pa\", \"[in_i'H2O]\", \"Cel\" or \"[degF]\", got \"bogus\""),
                bad(
                        "unit: Cel",
                        "unit: \"[in_i'H2O]{4Cel}\"",
                        "15:11: unit must be a UCUM code without annotation, such as \"Pa\", \"[in_i'H2O]\", \"Cel\" or \"[degF]\", got \"[in_i'H2O]{4Cel}\""),
                bad(
                        "unit: Cel",
                        "unit: Cel\n    inch-of-water: 4-Cel",
                        "16:20: inch-of-water needs the unit \"[in_i'H2O]\", got \"Cel\"; remove one"),
                bad(
                        "unit: Cel",
                        "unit: Cel\n    accuracy: {range-percent: 1}",
                        "16:16: range-percent needs \"range\" beside it"),
                bad("unit: Cel", "unit: Cel\n    resolution: 0", "16:17: resolution must be more than 0, got 0"),
                bad("unit: Cel", "unit: Cel\n    sign: minus", "16:11: sign must be one of 1, -1, got \"minus\""),
                bad("    field: t1\n", "", "13:5: item 1 of channels needs \"field\""),
                bad("field: t1", "field: t2", "14:12: no field is called \"t2\"; there are t1"),
                bad(
                        "baud: 9600",
                        "buad: 9600",
                        "5:11: serial needs \"baud\"",
                        "5:12: unknown key \"buad\"; did you mean \"baud\"?"),
                bad(
                        "baud: 9600",
                        "baud: 9600, colour: red",
                        "5:24: unknown key \"colour\"; known here: baud, data-bits, parity, stop-bits, flow"),
                bad("baud: 9600", "baud: 5", "5:18: baud must be at least 50, got 5"),
                bad("baud: 9600", "baud: 9600.5", "5:18: baud must be a whole number, got 9600.5"),
                bad("baud: 9600", "baud: 9600, data-bits: 9", "5:35: data-bits must be at most 8, got 9"),
                bad(
                        "baud: 9600",
                        "baud: 9600, parity: non",
                        "5:32: parity must be one of none, odd, even, mark, space, got \"non\"; did you mean none?"),
                bad("  serial: {baud: 9600}", "", "4:6: link must be a mapping of keys to values, got nothing"),
                bad(
                        "id: bench",
                        "id: My Bench",
                        "2:5: id must be lower-case letters, digits and hyphens, starting with a letter, got \"My Bench\""),
                bad(
                        "id: bench",
                        "id: bench\nsimulated: yes",
                        "3:12: simulated must be true or false, got \"yes\" (write true)"),
                bad("language: 1", "language: 2", "1:11: language must be 1, got 2"),
                bad("name: Bench", "name: \"\"", "3:7: name must not be shorter than 1 characters, got \"\""),
                bad(
                        "name: Bench",
                        "name: Bench\nname: Twice",
                        "4:1: key \"name\" stands twice, first in line 3; keep one"),
                bad(
                        "start: \"A5\"",
                        "start: \"A5 G\"",
                        "7:25: start must be bytes as pairs of hexadecimal digits in quotes, such as \"A5 5A\", got \"A5 G\""),
                bad(
                        "start: \"A5\"",
                        "start: \"A5 5\"",
                        "7:25: start must be pairs of hexadecimal digits, such as \"A5 5A\", got \"A5 5\""),
                bad(
                        "start: \"A5\"",
                        "start: 55",
                        "7:25: start must be bytes as pairs of hexadecimal digits in quotes, such as \"A5 5A\", got 55 (quote it: \"55\")"),
                bad(
                        "start: \"A5\", at: 1",
                        "start: \"A5 5A\", at: 1",
                        "7:38: at must lie after the start of 2 bytes, got 1"),
                bad(
                        "maximum-bytes: 16",
                        "maximum-bytes: 2",
                        "7:75: maximum-bytes must be more than the 2 bytes up to the end of the length, got 2"),
                bad(
                        "  length-field:",
                        "  fixed: {length-bytes: 8}\n  length-field:",
                        "7:3: framing must have exactly one of line, fixed, length-field, marks, slip, cobs, idle-gap, packet, got fixed and length-field"),
                bad("poly: 0x1021", "poly: 0x11021", "9:26: poly must fit 16 bits, got 0x11021"),
                bad(
                        "xorout: 0}",
                        "xorout: 0, check: 0x29B1}",
                        "9:90: check must be 0x31C3 by these parameters, got 0x29B1; compare width, poly, init, refin, refout and xorout"),
                bad(
                        "xorout: 0}",
                        "xorout: 0}\n  xor: {width: 8}",
                        "9:3: checksum must have exactly one of crc, sum, xor, lrc, got crc and xor"),
                bad(
                        "xorout: 0}",
                        "xorout: 0}\n  covers-from: 14",
                        "9:3: the checksum covers nothing: it does not fit the frame of 16 bytes"),
                bad(
                        "type: int16",
                        "type: in16",
                        "11:29: type must be one of int1 to int64, uint1 to uint64, bcd8 to bcd64, float16, float32, float64, medfloat16, medfloat32, text or utf8, got \"in16\"; did you mean int16?"),
                bad("type: int16", "type: text", "11:29: type text needs column or pattern rather than at"),
                bad("type: int16", "literal: \"00\"", "11:45: scale means nothing beside a literal; remove it"),
                bad(
                        "type: int16, scale: 0.01",
                        "literal: \"00\"",
                        "14:12: field \"t1\" is a literal, a channel needs a number"),
                bad(
                        "type: int16, scale: 0.01",
                        "scale: 0.01",
                        "11:5: field \"t1\" must have exactly one of type, literal, got none"),
                bad(
                        "type: int16",
                        "type: int16, literal: \"00\"",
                        "11:5: field \"t1\" must have exactly one of type, literal, got both"),
                bad("type: int16", "type: int16, plus: true", "11:42: plus means nothing for type int16; remove it"),
                bad("type: int16", "type: int16, counts: true", "11:44: counts needs an unsigned type such as uint8"),
                bad(
                        "type: int16",
                        "type: int16, special: {fault: 0x10000}",
                        "11:53: fault must be a whole number of 16 bits, got 65536"),
                bad(
                        "type: int16",
                        "type: int16, special: {fault: OVER}",
                        "11:53: fault must be a whole number of 16 bits, got \"OVER\""),
                bad(
                        "type: int16",
                        "type: float32, special: {fault: much}",
                        "11:55: fault must be a number, \"nan\", \"inf\" or \"-inf\", got \"much\""),
                bad(
                        "type: int16",
                        "type: int16, special: {broken: 1}",
                        "11:46: unknown key \"broken\"; known here: over-range, under-range, open-circuit, not-ready, fault"),
                bad(
                        "at: 2",
                        "at: 13",
                        "11:20: the field ends at byte 15, after the 14 bytes that the longest frame has before its checksum"),
                bad("at: 2", "column: 2", "11:33: type must be text for a column or a pattern, got \"int16\""),
                bad(
                        "at: 2, ",
                        "",
                        "11:5: field \"t1\" must have exactly one of at, column, pattern, register, tag, got none"),
                bad(
                        "channels:",
                        "  - {name: t1, at: 4, type: int16}\nchannels:",
                        "12:12: field \"t1\" stands twice; give each its own name"),
                bad(
                        "channels:",
                        "  - {name: a, at: 4, type: uint8, counts: true}\n  - {name: b, at: 5, type: uint8, counts: true}\nchannels:",
                        "11:3: only one field can have counts: true"),
                bad(
                        "examples:",
                        "  - {id: one, field: t1, unit: Pa}\nexamples:",
                        "16:10: channel \"one\" stands twice; give each its own id"),
                bad(
                        "examples:",
                        "columns: {separator: \",\"}\nexamples:",
                        "16:10: columns need the framing line; remove them"),
                bad("gives: {one: 0.01}", "gives: {two: 0.01}", "17:45: no channel is called \"two\"; there are one"),
                bad(
                        "gives: {one: 0.01}",
                        "gives: {one: broken}",
                        "17:45: one must be a number, or one of over-range, under-range, open-circuit, not-ready, fault, absent, got \"broken\""),
                bad("gives: {one: 0.01}", "gives: {}", "17:39: gives must have at least 1 entries, got 0"),
                bad(", gives: {one: 0.01}", "", "17:5: example 1 must have exactly one of gives, rejected, got none"),
                bad("hex: \"A5 02 01 00 3C 92\", ", "", "17:5: example 1 must have exactly one of hex, text, got none"),
                bad("baud: 9600", "baud: 1e300", "5:18: baud must be at most 4000000, got 1e300"),
                bad(
                        "start: \"A5\"",
                        "start: \" \"",
                        "7:25: start must be one byte at least, such as \"A5\", got blanks"),
                bad(
                        "{name: t1,",
                        "{name: [t1],",
                        "11:12: name is read as a list because of its square brackets; quote it: name: \"[t1]\"",
                        "14:12: no field is called \"t1\"; there are "),
                bad(
                        "hex: \"A5 02 01 00 3C 92\"",
                        "hex: \"A5 02 0\"",
                        "17:11: hex must be pairs of hexadecimal digits, such as \"A5 5A\", got \"A5 02 0\""));
    }

    static Stream<Arguments> lines() {
        return Stream.of(
                bad("column: 0", "at: 0", "8:28: type text needs column or pattern rather than at"),
                bad(
                        "column: 0, type: text",
                        "at: 0, type: int8",
                        "8:19: at needs a binary frame; use column or pattern in a line"),
                bad(
                        "column: 0",
                        "column: 2",
                        "8:23: column must be less than the count of 2 columns (they count from 0), got 2"),
                bad(
                        "columns: {separator: \" \", count: 2}\n",
                        "",
                        "7:23: column needs columns: {separator: ...} to say how a line is cut"),
                bad("separator: \" \"", "separator: \", \"", "6:22: separator must be one ASCII character, got \", \""),
                bad(
                        "end: \"\\n\", maximum-bytes: 40",
                        "end: \"\\r\\n\", maximum-bytes: 2",
                        "5:38: maximum-bytes must be more than the bytes of the end, got 2"),
                bad(
                        "column: 0",
                        "pattern: \"[0-9]+\"",
                        "8:24: pattern must have exactly one group in round brackets, got 0 (write (?:...) for brackets that only hold together)"),
                bad(
                        "column: 0",
                        "pattern: \"([0-9]+\"",
                        "8:24: pattern is no regular expression: missing closing ) in \"([0-9]+\""),
                bad(
                        "column: 0",
                        "pattern: \"((a{1000}){1000})\"",
                        "8:24: pattern is too large: its counted repetitions would fill the memory; use smaller counts, and no \\Q"),
                bad(
                        "column: 0",
                        "column: 0, pattern: \"(x)\"",
                        "8:5: field \"p\" must have exactly one of at, column, pattern, register, tag, got column and pattern"),
                bad("type: text", "type: text, counts: true", "8:46: counts means nothing for type text; remove it"),
                bad("type: text", "type: text, special: {fault: \" \"}", "8:55: fault must not be blank"),
                bad(
                        "columns:",
                        "checksum: {xor: {width: 8}}\ncolumns:",
                        "6:11: a checksum in a line must be text; add written: hex"));
    }

    private static Arguments bad(String from, String to, String... problems) {
        return Arguments.of(from, to, List.of(problems));
    }

    @ParameterizedTest
    @MethodSource
    void binary(String from, String to, List<String> expected) {
        check(BINARY, from, to, expected);
    }

    @ParameterizedTest
    @MethodSource
    void lines(String from, String to, List<String> expected) {
        check(LINES, from, to, expected);
    }

    private static void check(String profile, String from, String to, List<String> expected) {
        assertThat(profile).containsOnlyOnce(from);
        List<String> problems = problems(profile.replace(from, to));
        assertThat(problems).isEqualTo(expected.stream().map(e -> "p.yaml:" + e).toList());
    }

    private static List<String> problems(String text) {
        return ProfileReader.read("p.yaml", text.getBytes(StandardCharsets.UTF_8)).problems().stream()
                .map(Problem::toString)
                .toList();
    }

    @Test
    void theUnchangedProfilesHaveNoProblems() {
        assertThat(problems(BINARY)).isEmpty();
        assertThat(problems(LINES)).isEmpty();
    }

    @Test
    void allProblemsComeAtOnceInTheOrderOfTheText() {
        String text = BINARY.replace("baud: 9600", "baud: fast")
                .replace("poly: 0x1021", "poly: 0x11021")
                .replace("unit: Cel", "unit: [psi]")
                .replace("one: 0.01", "two: 0.01");
        assertThat(problems(text))
                .extracting(p -> p.substring(0, p.indexOf(' ')))
                .containsExactly("p.yaml:5:18:", "p.yaml:9:26:", "p.yaml:15:11:", "p.yaml:17:45:");
    }

    @Test
    void aProfileWithoutExamplesIsReadWithAWarning() {
        String text = BINARY.substring(0, BINARY.indexOf("examples:"));
        ProfileReading reading = ProfileReader.read("p.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.profile()).isPresent();
        assertThat(reading.problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "p.yaml:1:1: warning: no examples: nothing proves this profile; add a captured frame under \"examples\""
                                + " with the values that it must give");
    }

    @Test
    void examplesThatOnlyShowRejectionsProveNothing() {
        String text = BINARY.replace("gives: {one: 0.01}", "rejected: checksum");
        assertThat(problems(text))
                .containsExactly("p.yaml:17:3: warning: no good example: add a captured frame with the"
                        + " values that it must give");
    }

    @Test
    void framesWithoutAnyMarkAreRefused() {
        String text = BINARY.replaceAll("length-field: .*", "fixed: {length-bytes: 4}")
                .replaceAll("checksum:\n.*\n", "");
        assertThat(problems(text))
                .containsExactly("p.yaml:7:3: fixed frames need a start or a checksum: without them"
                        + " nothing shows where a frame begins");
    }

    @Test
    void aDocumentThatIsNoMappingIsSaidToBeNone() {
        assertThat(problems("- 1\n"))
                .containsExactly("p.yaml:1:1: the document must be a mapping of keys to values, got a list");
        assertThat(problems("hello"))
                .containsExactly("p.yaml:1:1: the document must be a mapping of keys to values, got \"hello\"");
    }
}
