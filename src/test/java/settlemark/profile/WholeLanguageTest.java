package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static settlemark.profile.ReadProfiles.field;
import static settlemark.profile.ReadProfiles.read;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import settlemark.measure.Channel;
import settlemark.measure.SampleStatus;

/** Every key of the language arrives in the model. */
final class WholeLanguageTest {
    private static final Curve RAW = new Curve.Linear(1, 0);

    private static final String SERIAL = """
            language: 1
            id: bench
            name: Bench
            recognise:
              - serial: {description: "bench gauge", vendor: 0x1209, product: 0x0001}
              - serial: {vendor: 0xFFFF}
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
              - send: {text: "x"}
                expect: {hex: "06"}
            actions:
              - id: zero
                label: Zero
                caution: Both ports open to the room.
                steps: [{send: {text: "ZERO"}}]
              - {id: tare, steps: [{wait: 2}]}
            messages:
              - id: reading
                ask: {text: "MEAS?\\n", period: 0.5, time-out: 1.5, retries: 2}
                framing: {line: {end: "\\n", maximum-bytes: 80}}
                fields:
                  - {name: p, pattern: "([0-9.]+)", type: text, table: [[0, 0], [10, -1]]}
                  - {name: r, pattern: "r=([0-9.]+)", type: text, polynomial: [1, 2, 3], decimals: 2, plus: true}
              - id: identity
                ask: {hex: "2A 49"}
                framing: {line: {end: "\\n", maximum-bytes: 80}}
                columns: {separator: ","}
                fields:
                  - {name: maker, column: 0, literal: "ours"}
                  - {name: serial, column: 2, type: utf8}
            channels:
              - {id: pressure, field: p, unit: Pa, warm-up: 60, resolution: 0.1, accuracy: {constant: 1, digits: 2}}
              - {id: ratio, field: r, unit: "%", period: 7}
            facts:
              - {id: serial-number, label: Serial number, field: serial}
              - {id: again, field: serial}
            examples:
              - {text: "1.5\\n", gives: {pressure: 0.15, ratio: absent}, source: trial}
              - {name: who, message: identity, text: "ours,b,c\\n", facts: {serial-number: c}}
            """;

    @Test
    void aSerialDeviceIsRecognisedAndStarted() {
        Profile profile = read(SERIAL);
        Recognition.Serial first = (Recognition.Serial) profile.recognitions().get(0);
        assertThat(first.description().orElseThrow().pattern()).isEqualTo("bench gauge");
        assertThat(first.vendor()).contains(0x1209);
        assertThat(first.product()).contains(1);
        assertThat(profile.recognitions().get(1))
                .isEqualTo(new Recognition.Serial(Optional.empty(), Optional.of(0xFFFF), Optional.empty()));
        assertThat(profile.startUp()).hasSize(4);
        assertThat(profile.startUp().get(0))
                .isEqualTo(new Step(
                        Optional.of(new Step.Bytes(text("*CLS\n"))),
                        Optional.of(new Step.ExpectBytes(text("OK"))),
                        2,
                        3,
                        0.1,
                        10));
        assertThat(profile.startUp().get(1)).isEqualTo(new Step(Optional.empty(), Optional.empty(), 1, 0, 1, 15));
        assertThat(profile.startUp().get(2).send()).contains(new Step.Bytes(ByteText.ofHex("A5 01")));
        Step.ExpectPattern pattern =
                (Step.ExpectPattern) profile.startUp().get(2).expect().orElseThrow();
        assertThat(pattern.pattern().pattern()).isEqualTo("^[A-Z]+$");
        assertThat(profile.startUp().get(3).expect()).contains(new Step.ExpectBytes(ByteText.ofHex("06")));
    }

    @Test
    void aSerialDeviceHasActions() {
        List<Action> actions = read(SERIAL).actions();
        assertThat(actions).extracting(Action::id).containsExactly("zero", "tare");
        assertThat(actions).extracting(Action::label).containsExactly("Zero", "tare");
        assertThat(actions).extracting(Action::caution).containsExactly("Both ports open to the room.", "");
        assertThat(actions).extracting(Action::line).containsExactly(21, 25);
        assertThat(actions.get(0).steps().get(0).send()).contains(new Step.Bytes(text("ZERO")));
        assertThat(actions.get(1).steps().get(0).waitSeconds()).isEqualTo(2);
    }

    @Test
    void eachMessageHasItsRequestAndItsFields() {
        List<Message> messages = read(SERIAL).messages();
        assertThat(messages).extracting(Message::id).containsExactly("reading", "identity");
        assertThat(messages).extracting(Message::line).containsExactly(27, 33);
        assertThat(messages.get(0).source()).isEqualTo(new Source.Answer(text("MEAS?\n"), new Poll(0.5, 1.5, 2)));
        assertThat(messages.get(1).source())
                .isEqualTo(new Source.Answer(ByteText.ofHex("2A 49"), new Poll(Double.NaN, 1, 0)));
        assertThat(((Field.Decimal) messages.get(0).fields().get(0).content()).curve())
                .isEqualTo(new Curve.Table(List.of(0.0, 10.0), List.of(0.0, -1.0)));
        assertThat(messages.get(0).fields().get(1).content())
                .isEqualTo(new Field.Decimal(
                        new Curve.Polynomial(List.of(1.0, 2.0, 3.0)), Optional.of(2), true, Map.of()));
        assertThat(messages.get(1).columns()).contains(new Framing.Columns(',', 0));
        assertThat(messages.get(1).fields().get(0).content()).isEqualTo(new Field.Literal(text("ours")));
        assertThat(messages.get(1).fields().get(1))
                .isEqualTo(new Field("serial", new Field.InColumn(2), new Field.Characters(0), Optional.empty(), 39));
    }

    @Test
    void channelsAndFactsNameFieldsOfTheirMessages() {
        Profile profile = read(SERIAL);
        Channel pressure = profile.channels().get(0);
        assertThat(pressure.warmUpSeconds()).isEqualTo(60);
        assertThat(pressure.accuracy().constant()).isEqualTo(1.2);
        assertThat(pressure.periodSeconds()).isEqualTo(0.5);
        assertThat(profile.channels().get(1).periodSeconds()).isEqualTo(7);
        assertThat(profile.sources().get(1).fields()).containsExactly(new FieldRef(0, 1));
        assertThat(profile.facts())
                .containsExactly(
                        new FactSource("serial-number", "Serial number", new FieldRef(1, 1), 44),
                        new FactSource("again", "again", new FieldRef(1, 1), 45));
    }

    @Test
    void examplesNameTheirMessage() {
        List<Example> examples = read(SERIAL).examples();
        assertThat(examples.get(0).gives()).isEqualTo(Map.of("pressure", new Example.Expected(0.15, SampleStatus.OK)));
        assertThat(examples.get(0).absent()).isEqualTo(Set.of("ratio"));
        assertThat(examples.get(0).message()).isZero();
        assertThat(examples.get(0).name()).isEqualTo("example 1");
        assertThat(examples.get(0).circumstances()).isEqualTo(Example.Circumstances.NONE);
        assertThat(examples.get(1).message()).isEqualTo(1);
        assertThat(examples.get(1).name()).isEqualTo("who");
        assertThat(examples.get(1).facts()).isEqualTo(Map.of("serial-number", "c"));
        assertThat(examples.get(1).isGood()).isTrue();
        assertThat(examples.get(1).bytes()).isEqualTo(text("ours,b,c\n"));
    }

    private static final String MODBUS = """
            language: 1
            id: regs
            name: Registers
            link:
              modbus-rtu: {unit: 7, address-base: 1, baud: 19200}
            start-up:
              - send: {register: 10, values: [1, 0xFFFF]}
                time-out: 3
            ask: {function: 4, register: 101, count: 6, period: 1}
            fields:
              - {name: inlet, register: 101, type: int16, scale: 0.1}
              - {name: flow, register: 102, type: float32, word-order: little}
              - {name: total, register: 104, type: uint32, word-order: big, byte-order: little}
              - {name: flag, register: 106, type: uint1, bit: 9}
              - {name: low, register: 106, type: uint8}
              - {name: three, register: 105, type: uint24, word-order: big}
              - {name: words, register: 105, type: utf8, length: 4}
            channels:
              - {id: inlet, field: inlet, unit: Cel}
              - {id: flow, field: flow, unit: "m3/h"}
            examples:
              - {hex: "07 04 08 00 00", rejected: checksum}
              - {hex: "07 04 08 00 00", gives: {inlet: 1, flow: not-ready}}
            """;

    @Test
    void aModbusRequestSaysWhatItsAnswerLooksLike() {
        Profile profile = read(MODBUS);
        SerialLine line =
                new SerialLine(19200, 8, SerialLine.Parity.EVEN, SerialLine.StopBits.ONE, SerialLine.Flow.NONE);
        assertThat(profile.link()).contains(new Link.ModbusRtu(line, 7));
        Message message = profile.messages().get(0);
        assertThat(message.id()).isEqualTo("frame");
        assertThat(message.source()).isEqualTo(new Source.Registers(4, 100, 6, new Poll(1, 1, 0)));
        assertThat(message.framing()).isEqualTo(new Framing.Fixed(ByteText.EMPTY, 17));
        assertThat(message.checksum())
                .contains(new Checksum(
                        new Checksum.Crc(16, 0x8005, 0xFFFF, true, true, 0),
                        Wire.Order.LITTLE,
                        0,
                        0,
                        false,
                        ByteText.EMPTY,
                        9));
        assertThat(message.fields().subList(7, 9))
                .containsExactly(
                        new Field(
                                "(function)",
                                new Field.AtByte(1),
                                new Field.Literal(ByteText.ofHex("04")),
                                Optional.empty(),
                                9),
                        new Field(
                                "(byte count)",
                                new Field.AtByte(2),
                                new Field.Literal(ByteText.ofHex("0C")),
                                Optional.empty(),
                                9));
        assertThat(profile.startUp().get(0).send()).contains(new Step.SetRegisters(9, List.of(1, 0xFFFF)));
        assertThat(profile.startUp().get(0).timeOutSeconds()).isEqualTo(3);
        assertThat(profile.channels()).extracting(Channel::periodSeconds).containsExactly(1.0, 1.0);
    }

    @Test
    void registersStandInWholeWordsWithTheHighByteFirst() {
        Message message = read(MODBUS).messages().get(0);
        assertThat(message.fields())
                .extracting(Field::place)
                .startsWith(
                        new Field.AtByte(3),
                        new Field.AtByte(5),
                        new Field.AtByte(9),
                        new Field.AtByte(13),
                        new Field.AtByte(13),
                        new Field.AtByte(11),
                        new Field.AtByte(11));
        assertThat(field(message, "inlet"))
                .isEqualTo(binary(new Wire(Wire.Kind.SIGNED, 2, Wire.Order.BIG), null, new Curve.Linear(0.1, 0)));
        assertThat(field(message, "flow"))
                .isEqualTo(binary(new Wire(Wire.Kind.IEEE_FLOAT, 4, Wire.Order.BIG_WORDS_SWAPPED), null, RAW));
        assertThat(field(message, "total"))
                .isEqualTo(binary(new Wire(Wire.Kind.UNSIGNED, 4, Wire.Order.LITTLE_WORDS_SWAPPED), null, RAW));
        assertThat(field(message, "flag"))
                .isEqualTo(binary(new Wire(Wire.Kind.UNSIGNED, 2, Wire.Order.BIG), new Field.Bits(9, 1), RAW));
        assertThat(field(message, "low"))
                .isEqualTo(binary(new Wire(Wire.Kind.UNSIGNED, 2, Wire.Order.BIG), new Field.Bits(0, 8), RAW));
        assertThat(field(message, "three"))
                .isEqualTo(binary(new Wire(Wire.Kind.UNSIGNED, 4, Wire.Order.BIG), new Field.Bits(0, 24), RAW));
        assertThat(field(message, "words")).isEqualTo(new Field.Characters(4));
    }

    @Test
    void registersMayCountFromNothingAndAskOnce() {
        Profile profile =
                read(MODBUS.replace("address-base: 1", "address-base: 0").replace(", period: 1", ""));
        assertThat(profile.messages().get(0).source())
                .isEqualTo(new Source.Registers(4, 101, 6, new Poll(Double.NaN, 1, 0)));
        assertThat(profile.messages().get(0).fields().get(0).place()).isEqualTo(new Field.AtByte(3));
        assertThat(profile.startUp().get(0).send()).contains(new Step.SetRegisters(10, List.of(1, 0xFFFF)));
        assertThat(profile.channels().get(0).periodSeconds()).isNaN();
        String last = MODBUS.replace("register: 10,", "register: 65535,");
        assertThat(read(last).startUp().get(0).send()).contains(new Step.SetRegisters(65534, List.of(1, 0xFFFF)));
    }

    private static final String BLE = """
            language: 1
            id: env
            name: Environment
            recognise:
              - ble: {name: "^Probe [0-9]+$", services: ["181A", "181a", "0000FCD2"], company: 0xFFFF}
              - ble: {services: ["12345678-9abc-def0-1234-56789abcdef0"]}
            link: {ble: connected}
            start-up:
              - send: {characteristic: "2A57", hex: "01", acknowledged: false}
              - send: {characteristic: "2A57", text: "a"}
                retries: 1
            messages:
              - id: pressure
                characteristic: {service: "181A", uuid: "2A6D", by: read, period: 2, presentation-format: true, measurement: true}
                fields:
                  - {name: kind, at: 0, type: uint8}
                  - {name: p, at: 1, type: uint32, scale: 0.1, when: {field: kind, is: [1, 2]}}
                  - {name: q, at: 1, type: bcd16, when: {field: kind, is: 3}}
              - id: heat
                characteristic: {uuid: "2A1C", by: indicate}
                framing: {packet: {maximum-bytes: 20}}
                fields: [{name: h, at: 1, type: medfloat32}]
              - id: advert
                service-data: "FCD2"
                cipher: bthome-v2
                tagged: {at: 1, tag: uint8, lengths: {0x00: 1, 2: 2, 0x53: said}}
                fields:
                  - {name: t, tag: 0x02, nth: 1, at: 1, type: int8}
                  - {name: words, tag: 0x53, type: utf8, length: 4}
              - id: company
                company-data: 0xFFFF
                tagged: {tag: uint16, length: uint8, byte-order: big}
                fields: [{name: u, tag: 0x1234, type: uint8}]
            channels:
              - {id: pressure, field: [p, q], unit: Pa}
              - {id: t, field: t, unit: Cel}
            examples:
              - hex: "01 00 00 00 00"
                gives: {pressure: 0}
                presentation: "06 FF 24 27 01 00 00"
                measurement: "00 00 01 00 00 00 00 00 00 01 FF"
              - message: advert
                hex: "40 02 CA 09"
                gives: {t: 25.06}
                address: "54:48:E6:8F:80:A5"
                key: "231d39c1d7cc1ab1aee224cd096db932"
            """;

    private static UUID assigned(String digits) {
        return UUID.fromString("0000" + digits + "-0000-1000-8000-00805f9b34fb");
    }

    @Test
    void bluetoothDevicesAreRecognisedAndStarted() {
        Profile profile = read(BLE);
        assertThat(profile.link()).contains(new Link.BleConnected());
        Recognition.Ble ble = (Recognition.Ble) profile.recognitions().get(0);
        assertThat(ble.name().orElseThrow().pattern()).isEqualTo("^Probe [0-9]+$");
        assertThat(ble.services()).containsExactly(assigned("181a"), assigned("fcd2"));
        assertThat(ble.company()).contains(0xFFFF);
        assertThat(profile.recognitions().get(1))
                .isEqualTo(new Recognition.Ble(
                        Optional.empty(),
                        List.of(UUID.fromString("12345678-9abc-def0-1234-56789abcdef0")),
                        Optional.empty()));
        assertThat(profile.startUp())
                .extracting(step -> step.send().orElseThrow())
                .containsExactly(
                        new Step.Write(assigned("2a57"), ByteText.ofHex("01"), false),
                        new Step.Write(assigned("2a57"), ByteText.ofHex("61"), true));
        assertThat(profile.startUp().get(1).retries()).isEqualTo(1);
    }

    @Test
    void characteristicsAndAdvertisementsAreSources() {
        List<Message> messages = read(BLE).messages();
        assertThat(messages)
                .extracting(Message::source)
                .containsExactly(
                        new Source.Characteristic(
                                Optional.of(assigned("181a")),
                                assigned("2a6d"),
                                Source.By.READ,
                                new Poll(2, 1, 0),
                                true,
                                true),
                        new Source.Characteristic(
                                Optional.empty(),
                                assigned("2a1c"),
                                Source.By.INDICATE,
                                new Poll(Double.NaN, 1, 0),
                                false,
                                false),
                        new Source.ServiceData(assigned("fcd2")),
                        new Source.CompanyData(0xFFFF));
        assertThat(messages)
                .extracting(Message::framing)
                .containsExactly(
                        new Framing.Packet(512),
                        new Framing.Packet(20),
                        new Framing.Packet(255),
                        new Framing.Packet(255));
        assertThat(messages.get(2).cipher()).contains(Cipher.BTHOME_V2);
        assertThat(messages.get(3).cipher()).isEmpty();
        assertThat(read(BLE).channels()).extracting(Channel::periodSeconds).containsExactly(2.0, Double.NaN);
    }

    @Test
    void tagsAndConditionsFindTheirFields() {
        Profile profile = read(BLE);
        List<Message> messages = profile.messages();
        Wire oneByte = new Wire(Wire.Kind.UNSIGNED, 1, Wire.Order.LITTLE);
        assertThat(messages.get(2).tagged())
                .contains(new Tagged(1, oneByte, Optional.empty(), Map.of(0L, 1, 2L, 2, 0x53L, Tagged.SAID)));
        assertThat(messages.get(3).tagged())
                .contains(new Tagged(
                        0,
                        new Wire(Wire.Kind.UNSIGNED, 2, Wire.Order.BIG),
                        Optional.of(new Wire(Wire.Kind.UNSIGNED, 1, Wire.Order.BIG)),
                        Map.of()));
        assertThat(messages.get(2).fields().get(0).place()).isEqualTo(new Field.ByTag(2, 1, 1));
        assertThat(messages.get(2).fields().get(1).place()).isEqualTo(new Field.ByTag(0x53, 0, 0));
        assertThat(messages.get(0).fields())
                .extracting(Field::when)
                .containsExactly(
                        Optional.empty(),
                        Optional.of(new Field.Condition(0, List.of(1L, 2L))),
                        Optional.of(new Field.Condition(0, List.of(3L))));
        assertThat(profile.sources().get(0).fields()).containsExactly(new FieldRef(0, 1), new FieldRef(0, 2));
    }

    @Test
    void examplesHaveTheirCircumstances() {
        List<Example> examples = read(BLE).examples();
        assertThat(examples.get(0).circumstances())
                .isEqualTo(new Example.Circumstances(
                        Secrets.NONE,
                        Optional.of(ByteText.ofHex("06 FF 24 27 01 00 00")),
                        Optional.of(ByteText.ofHex("00 00 01 00 00 00 00 00 00 01 FF"))));
        assertThat(examples.get(1).circumstances().secrets())
                .isEqualTo(new Secrets(
                        ByteText.ofHex("5448E68F80A5"), ByteText.ofHex("231d39c1d7cc1ab1aee224cd096db932")));
        assertThat(examples.get(1).toString())
                .doesNotContainIgnoringCase("231d39")
                .doesNotContain("23 1D 39");
    }

    private static ByteText text(String text) {
        return ByteText.of(text.getBytes(StandardCharsets.UTF_8));
    }

    private static Field.Binary binary(Wire wire, Field.@Nullable Bits bits, Curve curve) {
        return new Field.Binary(wire, Optional.ofNullable(bits), -1L, curve, Map.of(), false);
    }
}
