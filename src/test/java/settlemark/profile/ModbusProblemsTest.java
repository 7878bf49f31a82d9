package settlemark.profile;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Complaints about a profile of a Modbus device; each case replaces one piece of it. */
final class ModbusProblemsTest {
    private static final ProblemCases CASES = new ProblemCases("""
            language: 1
            id: regs
            name: Registers
            link:
              modbus-rtu: {unit: 7, address-base: 1, baud: 19200}
            start-up:
              - send: {register: 10, values: [1, 2]}
            ask: {function: 4, register: 101, count: 6, period: 1}
            fields:
              - {name: inlet, register: 101, type: int16}
              - {name: flow, register: 103, type: float32, word-order: big}
            channels:
              - {id: inlet, field: inlet, unit: Cel}
            examples:
              - {hex: "07 04", gives: {inlet: 1}}
            """);

    static Stream<Arguments> problems() {
        return Stream.of(
                ProblemCases.bad(", address-base: 1", "", "5:15: modbus-rtu needs \"address-base\""),
                ProblemCases.bad("address-base: 1", "address-base: 2", "5:39: address-base must be one of 0, 1, got 2"),
                ProblemCases.bad("unit: 7", "unit: 248", "5:22: unit must be at most 247, got 248"),
                ProblemCases.bad(
                        "register: 10, values: [1, 2]",
                        "register: 0, values: [1]",
                        "7:22: registers go from 1 to 65536 (address-base 1), got 1 from 0"),
                ProblemCases.bad(
                        "register: 10, values: [1, 2]",
                        "register: 65536, values: [1, 2]",
                        "7:22: registers go from 1 to 65536 (address-base 1), got 2 from 65536"),
                ProblemCases.bad(
                        "register: 10, values: [1, 2]",
                        "register: 10, values: [70000]",
                        "7:35: item 1 of values must be at most 65535, got 70000"),
                ProblemCases.bad(
                        "register: 10, values: [1, 2]",
                        "text: \"x\"",
                        "7:11: send with text or hex alone needs the link serial, got modbus-rtu"),
                ProblemCases.bad(
                        "values: [1, 2]}",
                        "values: [1, 2]}\n    expect: {text: \"x\"}",
                        "8:13: expect needs the link serial, got modbus-rtu; remove it"),
                ProblemCases.bad("function: 4", "function: 5", "8:17: function must be one of 3, 4, got 5"),
                ProblemCases.bad(", count: 6", "", "8:6: function needs count beside it"),
                ProblemCases.bad(
                        "register: 101, count: 6",
                        "register: 0, count: 6",
                        "8:30: registers go from 1 to 65536 (address-base 1), got 6 from 0"),
                ProblemCases.bad(
                        "register: 101, count: 6",
                        "register: 65532, count: 6",
                        "8:30: registers go from 1 to 65536 (address-base 1), got 6 from 65532"),
                ProblemCases.bad(
                        "register: 101, count: 6",
                        "register: 101, count: 126",
                        "8:42: count must be at most 125, got 126"),
                ProblemCases.bad(
                        "ask: {function: 4, register: 101, count: 6, period: 1}\n",
                        "",
                        "1:1: the profile needs ask: a Modbus device sends nothing by itself",
                        "9:29: register needs ask: {function: 3, register: ..., count: ...} in its message",
                        "10:28: register needs ask: {function: 3, register: ..., count: ...} in its message"),
                ProblemCases.bad(
                        "ask: {function: 4, register: 101, count: 6, period: 1}",
                        "ask: {hex: \"01\"}\nframing: {cobs: {maximum-bytes: 20}}",
                        "8:6: ask with text or hex needs the link serial, got modbus-rtu",
                        "11:29: register needs ask: {function: 3, register: ..., count: ...} in its message",
                        "12:28: register needs ask: {function: 3, register: ..., count: ...} in its message"),
                ProblemCases.bad(
                        "fields:\n",
                        "framing: {cobs: {maximum-bytes: 20}}\nfields:\n",
                        "9:1: framing follows from ask: {function: ...} in Modbus; remove it"),
                ProblemCases.bad(
                        "register: 101, type: int16",
                        "register: 100, type: int16",
                        "10:29: register must be one of the 6 that are asked for, 101 to 106, got 100"),
                ProblemCases.bad(
                        "register: 101, type: int16",
                        "register: 107, type: int16",
                        "10:29: register must be one of the 6 that are asked for, 101 to 106, got 107"),
                ProblemCases.bad(
                        "register: 103, type",
                        "register: 106, type",
                        "11:28: the field takes registers 106 to 107, the last that is asked for is 106"),
                ProblemCases.bad(
                        "register: 101, type: int16",
                        "at: 3, type: int16",
                        "10:23: at cannot be used in a Modbus answer; use register"),
                ProblemCases.bad(
                        ", word-order: big",
                        "",
                        "11:5: float32 takes 2 registers and needs word-order: big where the first register has the high word, little where it has the low word"),
                ProblemCases.bad(
                        "type: int16",
                        "type: int16, word-order: big",
                        "10:59: word-order needs 32, 48 or 64 bits, got 16; remove it"),
                ProblemCases.bad(
                        "type: int16",
                        "type: bcd8",
                        "10:40: type must fill whole registers: bcd16, bcd32, bcd48 or bcd64, got bcd8"),
                ProblemCases.bad(
                        "type: int16", "type: text", "10:40: type text needs column or pattern rather than register"),
                ProblemCases.bad(
                        "type: int16",
                        "type: utf8, length: 20",
                        "10:29: the field takes registers 101 to 110, the last that is asked for is 106",
                        "13:24: field \"inlet\" holds words, a channel needs a number; use it under facts"),
                ProblemCases.bad(
                        "type: float32, word-order: big",
                        "type: uint3, bit: 62",
                        "11:51: bit must leave room for the 3 bits of uint3 within 64 bits: at most 61, got 62"));
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
