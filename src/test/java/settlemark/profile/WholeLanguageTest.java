package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Every key of the language arrives in the model. */
final class WholeLanguageTest {
    private static Profile read(String text) {
        ProfileReading reading = ProfileReader.read("p.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.problems()).isEmpty();
        return reading.orThrow();
    }

    private static final String SERIAL = """
            language: 1
            id: bench
            name: Bench
            recognise:
              - serial: {description: "bench gauge", vendor: 0x1209, product: 0x0001}
            link:
              serial: {baud: 9600}
            start-up:
              - send: {text: "*CLS\\n"}
                expect: {text: "OK"}
                time-out: 2
                retries: 3
                wait: 0.1
              - wait: 1
              - send: {hex: "A5 01"}
                expect: {pattern: "^[A-Z]+$"}
            actions:
              - id: zero
                label: Zero
                caution: Both ports open to the room.
                steps: [{send: {text: "ZERO\\n"}}]
            messages:
              - id: reading
                ask: {text: "MEAS?\\n", period: 0.5, time-out: 1.5, retries: 2}
                framing: {line: {end: "\\n", maximum-bytes: 80}}
                fields:
                  - {name: p, pattern: "([0-9.]+)", type: text, table: [[0, 0], [10, 1]]}
              - id: identity
                ask: {text: "*IDN?\\n"}
                framing: {line: {end: "\\n", maximum-bytes: 80}}
                columns: {separator: ","}
                fields:
                  - {name: serial, column: 2, type: utf8}
            channels:
              - {id: pressure, field: p, unit: Pa, warm-up: 60, resolution: 0.1, accuracy: {constant: 1, digits: 2}}
            facts:
              - {id: serial-number, label: Serial number, field: serial}
            examples:
              - {text: "1.5\\n", gives: {pressure: 0.15}}
              - {message: identity, text: "a,b,c\\n", facts: {serial-number: c}}
            """;

    private static final String MODBUS = """
            language: 1
            id: regs
            name: Registers
            link:
              modbus-rtu: {unit: 7, address-base: 1, baud: 19200}
            start-up:
              - send: {register: 10, values: [1, 0xFFFF]}
            ask: {function: 4, register: 101, count: 6, period: 1}
            fields:
              - {name: inlet, register: 101, type: int16, scale: 0.1}
              - {name: flow, register: 103, type: float32, word-order: little}
              - {name: flags, register: 105, type: uint1, bit: 9}
              - {name: low, register: 106, type: uint8}
            channels:
              - {id: inlet, field: inlet, unit: Cel}
              - {id: flow, field: flow, unit: "m3/h"}
            examples:
              - {hex: "07 04 08 00 00", rejected: checksum}
              - {hex: "07 04 08 00 00", gives: {inlet: 1, flow: absent}}
            """;

    private static final String BLE = """
            language: 1
            id: env
            name: Environment
            recognise:
              - ble: {name: "^Probe [0-9]+$", services: ["181A", "FCD2"], company: 0xFFFF}
            link: {ble: connected}
            start-up:
              - send: {characteristic: "2A57", hex: "01", acknowledged: false}
            messages:
              - id: pressure
                characteristic: {service: "181A", uuid: "2A6D", by: read, period: 2, presentation-format: true, measurement: true}
                fields:
                  - {name: kind, at: 0, type: uint8}
                  - {name: p, at: 1, type: uint32, scale: 0.1, when: {field: kind, is: [1, 2]}}
                  - {name: q, at: 1, type: bcd16, when: {field: kind, is: 3}}
              - id: advert
                service-data: "FCD2"
                cipher: bthome-v2
                tagged: {at: 1, tag: uint8, lengths: {0x00: 1, 0x02: 2, 0x53: said}}
                fields:
                  - {name: t, tag: 0x02, nth: 1, type: int16, scale: 0.01}
                  - {name: words, tag: 0x53, type: utf8, length: 4}
            channels:
              - {id: pressure, field: [p, q], unit: Pa}
              - {id: t, field: t, unit: Cel}
            examples:
              - {hex: "01 00 00 00 00", gives: {pressure: 0}, presentation: "06 FF 24 27 01 00 00", measurement: "00 00 01 00 00 00 00 00 00 01 FF"}
              - {message: advert, hex: "40 02 CA 09", gives: {t: 25.06}, address: "54:48:E6:8F:80:A5", key: "231d39c1d7cc1ab1aee224cd096db932"}
            """;

    @Test
    void serial() {
        assertThat(read(SERIAL).messages()).hasSize(2);
    }

    @Test
    void modbus() {
        assertThat(read(MODBUS).messages()).hasSize(1);
    }

    @Test
    void ble() {
        assertThat(read(BLE).messages()).hasSize(2);
    }
}
