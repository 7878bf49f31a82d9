package settlemark.profile;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Complaints about a profile of frames between marks with a checksum; each case replaces one piece of it. */
final class FrameProblemsTest {
    private static final ProblemCases CASES = new ProblemCases("""
            language: 1
            id: marks
            name: Marks
            framing:
              marks: {start: "02", end: "03", escape: {byte: "7D", xor: "20"}, maximum-bytes: 20}
            checksum: {lrc: {width: 8}, followed-by: 1}
            fields:
              - {name: x, at: 4, type: uint16, mask: 0x0FFF, scale: 2}
            channels:
              - {id: x, field: x, unit: "%"}
            examples:
              - {hex: "02", gives: {x: 1}}
            """);

    static Stream<Arguments> problems() {
        return Stream.of(
                ProblemCases.bad("end: \"03\", ", "", "5:10: marks needs \"end\""),
                ProblemCases.bad(
                        "end: \"03\"",
                        "end: \"0\"",
                        "5:29: end must be pairs of hexadecimal digits, such as \"A5 5A\", got \"0\""),
                ProblemCases.bad(
                        "end: \"03\"", "end: \"7D\"", "5:50: the escape byte must differ from the marks, got 7D"),
                ProblemCases.bad(
                        "start: \"02\"",
                        "start: \"2\"",
                        "5:18: start must be pairs of hexadecimal digits, such as \"A5 5A\", got \"2\""),
                ProblemCases.bad(
                        "maximum-bytes: 20",
                        "maximum-bytes: 2",
                        "5:83: maximum-bytes must be more than the bytes of the marks, got 2"),
                ProblemCases.bad(
                        "maximum-bytes: 20",
                        "maximum-bytes: 6",
                        "8:19: the field ends at byte 6, after the 2 bytes that the longest frame has before its checksum"),
                ProblemCases.bad(
                        "maximum-bytes: 20",
                        "maximum-bytes: 70000",
                        "5:83: maximum-bytes must be at most 65536, got 70000"),
                ProblemCases.bad("xor: \"20\"", "xor: \"00\"", "5:61: xor must not be 00: it would change nothing"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "xor: \"01\"",
                        "5:61: xor must make other bytes of the marks: 02 would travel as 03, which is a mark or the escape itself"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "xor: \"7F\"",
                        "5:61: xor must make other bytes of the marks: 02 would travel as 7D, which is a mark or the escape itself"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "xor: 20",
                        "5:61: xor must be one byte as two hexadecimal digits in quotes, such as \"7D\", got 20 (quote it: \"20\")"),
                ProblemCases.bad(", xor: \"20\"", "", "5:43: escape must have exactly one of xor, codes, got none"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "xor: \"20\", codes: {\"00\": \"7D\"}",
                        "5:43: escape must have exactly one of xor, codes, got both"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "codes: {\"00\": \"02\"}",
                        "5:63: codes must have one for the escape byte 7D itself: without it that byte could not travel"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "codes: {\"0\": \"7D\"}",
                        "5:64: a code must be one byte as two hexadecimal digits, such as \"DC\", got \"0\""),
                ProblemCases.bad("xor: \"20\"", "codes: {\"03\": \"7D\"}", "5:64: code 03 must differ from the marks"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "codes: {\"00\": \"7D\", \"01\": \"7D\"}",
                        "5:82: two codes stand for 7D; keep one"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "codes: {\"aa\": \"7D\", \"AA\": \"02\"}",
                        "5:76: code AA stands twice; keep one"),
                ProblemCases.bad(
                        "xor: \"20\"",
                        "codes: {\"aa\": \"7D1\"}",
                        "5:70: aa must be one byte as two hexadecimal digits in quotes, such as \"7D\", got \"7D1\""),
                ProblemCases.bad(
                        "byte: \"7D\"",
                        "byte: \"7D7\"",
                        "5:50: byte must be one byte as two hexadecimal digits in quotes, such as \"7D\", got \"7D7\""),
                ProblemCases.bad("byte: \"7D\", ", "", "5:43: escape needs \"byte\""),
                ProblemCases.bad("followed-by: 1", "followed-by: -1", "6:42: followed-by must be at least 0, got -1"),
                ProblemCases.bad(
                        "followed-by: 1",
                        "followed-by: 17",
                        "6:11: the checksum covers nothing: it does not fit the frame of 18 bytes",
                        "8:19: the field ends at byte 6, after the 0 bytes that the longest frame has before its checksum"),
                ProblemCases.bad(
                        "at: 4",
                        "at: 15",
                        "8:19: the field ends at byte 17, after the 16 bytes that the longest frame has before its checksum"),
                ProblemCases.bad(
                        "at: 4, type: uint16, mask: 0x0FFF",
                        "column: 4, type: text",
                        "8:5: a column or a pattern needs the framing line; use at for the offset in a binary frame"),
                ProblemCases.bad("mask: 0x0FFF", "mask: 0x10000", "8:42: mask must fit 16 bits, got 0x10000"),
                ProblemCases.bad("mask: 0x0FFF", "mask: 0", "8:42: mask must be at least 1, got 0"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: int16, mask: 0x0FFF",
                        "8:41: mask needs an unsigned type such as uint16, got type int16"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: float32, mask: 0x0FFF",
                        "8:43: mask means nothing for type float32; remove it"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint16, bit: 50",
                        "8:41: bit must leave room for the 16 bits of uint16 within 64 bits: at most 48, got 50"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint65",
                        "8:28: type must be one of int1 to int64, uint1 to uint64, bcd8 to bcd64, float16, float32, float64, medfloat16, medfloat32, text or utf8, got \"uint65\"; did you mean uint64?"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint12, word-order: big",
                        "8:48: word-order needs 32, 48 or 64 bits, got 16; remove it"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint24, word-order: little",
                        "8:48: word-order needs 32, 48 or 64 bits, got 24; remove it"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: bcd12",
                        "8:28: type must be one of int1 to int64, uint1 to uint64, bcd8 to bcd64, float16, float32, float64, medfloat16, medfloat32, text or utf8, got \"bcd12\"; did you mean bcd16?"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: bcd16, special: {fault: 10000}",
                        "8:52: fault must be a whole number of 4 decimal digits, or what travels in quotes, such as \"FFFF\", got 10000"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: bcd16, special: {fault: -1}",
                        "8:52: fault must be a whole number of 4 decimal digits, or what travels in quotes, such as \"FFFF\", got -1"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: bcd16, bit: 3",
                        "8:40: bit means nothing for type bcd16; remove it"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint12, special: {fault: 0x1000}",
                        "8:53: fault must be a whole number of 12 bits, got 4096"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint1, special: {fault: 2}",
                        "8:52: fault must be a whole number of 1 bit, got 2"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: int12, special: {fault: -2049}",
                        "8:52: fault must be a whole number of 12 bits, got -2049"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint16, special: {fault: -1}",
                        "8:53: fault must be a whole number of 16 bits, got -1"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: medfloat16, special: {fault: 1.5}",
                        "8:57: fault must be a whole number of 16 bits, got 1.5"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint16, length: 4",
                        "8:44: length means nothing for type uint16; remove it"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF",
                        "type: uint16, special: {fault: [1, 0x10000, x]}",
                        "8:53: fault must be a whole number of 16 bits, got \"x\"",
                        "8:53: fault must be a whole number of 16 bits, got 65536"),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF, scale: 2",
                        "literal: \"0\"",
                        "8:31: literal must be pairs of hexadecimal digits, such as \"A5 5A\", got \"0\""),
                ProblemCases.bad(
                        "type: uint16, mask: 0x0FFF, scale: 2",
                        "type: uint16, polynomial: [0, 1], scale: 2, table: [[0,0],[1,1]]",
                        "8:48: a field must have at most one of scale with offset, polynomial, table, got scale and polynomial and table"),
                ProblemCases.bad(
                        "  marks: {start: \"02\", end: \"03\", escape: {byte: \"7D\", xor: \"20\"}, maximum-bytes: 20}",
                        "  slip: {}",
                        "5:9: slip needs \"maximum-bytes\""),
                ProblemCases.bad(
                        "  marks: {start: \"02\", end: \"03\", escape: {byte: \"7D\", xor: \"20\"}, maximum-bytes: 20}",
                        "  cobs: {maximum-bytes: 7}",
                        "8:19: the field ends at byte 6, after the 3 bytes that the longest frame has before its checksum"),
                ProblemCases.bad(
                        "  marks: {start: \"02\", end: \"03\", escape: {byte: \"7D\", xor: \"20\"}, maximum-bytes: 20}",
                        "  length-field: {at: 1, type: uint24, adds: 0, maximum-bytes: 4}",
                        "5:63: maximum-bytes must be more than the 4 bytes up to the end of the length, got 4"),
                ProblemCases.bad(
                        "  marks: {start: \"02\", end: \"03\", escape: {byte: \"7D\", xor: \"20\"}, maximum-bytes: 20}\nchecksum: {lrc: {width: 8}, followed-by: 1}",
                        "  length-field: {at: 0, type: uint8, adds: 0, maximum-bytes: 20}",
                        "5:3: frames with a length field need a start or a checksum: without them nothing shows where a frame begins"),
                ProblemCases.bad("lrc: {width: 8}", "lrc: {width: 16}", "6:25: width must be 8, got 16"),
                ProblemCases.bad(
                        "lrc: {width: 8}",
                        "crc: {width: 2, poly: 1, init: 0, refin: false, refout: false, xorout: 0}",
                        "6:25: width must be at least 3, got 2"),
                ProblemCases.bad(
                        "framing:\n  marks",
                        "columns: {separator: \",\"}\ntagged: {tag: uint8, length: uint8}\nframing:\n  marks",
                        "4:10: columns need the framing line; remove them"),
                ProblemCases.bad(
                        "framing:\n  marks: {start: \"02\", end: \"03\", escape: {byte: \"7D\", xor: \"20\"}, maximum-bytes: 20}\n",
                        "",
                        "1:1: the profile needs \"framing\": how its bytes are cut into frames"),
                ProblemCases.bad(
                        "fields:\n  - {name: x, at: 4, type: uint16, mask: 0x0FFF, scale: 2}\n",
                        "",
                        "1:1: the profile needs \"fields\" or \"messages\"",
                        "8:20: no field is called \"x\"; there are none"),
                ProblemCases.bad(
                        "unit: \"%\"",
                        "unit: [psi]",
                        "10:29: unit is read as a list because of its square brackets; quote it: unit: \"[psi]\""),
                ProblemCases.bad(
                        "unit: \"%\"",
                        "unit: [in_i'H2O]",
                        "10:29: unit is read as a list because of its square brackets; quote it: unit: \"[in_i'H2O]\""));
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
