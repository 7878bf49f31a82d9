package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Accuracy;
import settlemark.measure.Channel;
import settlemark.measure.Dimension;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;

final class ProfileReaderTest {
    private static ProfileReading read(String text) {
        return ProfileReader.read("p.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void theDemoGaugeHasTwoPortsAndABattery() {
        Profile gauge = ProfileLibrary.get("demo-gauge");
        assertThat(gauge.simulated()).isTrue();
        assertThat(gauge.channels()).extracting(Channel::name).containsExactly("port-1", "port-2", "battery");
        assertThat(gauge.sources()).extracting(ChannelSource::sign).containsExactly(1, -1, 1);
        assertThat(gauge.channels().get(1))
                .isEqualTo(new Channel(
                        "port-2",
                        "P2",
                        Dimension.PRESSURE,
                        Unit.INCH_OF_WATER,
                        0.01,
                        new Accuracy(0.005, 0, 0.01, 0),
                        0.1,
                        0.10,
                        0));
        assertThat(gauge.channels().get(2).accuracy()).isEqualTo(Accuracy.UNKNOWN);
        assertThat(gauge.channels().get(2).zeroLimit()).isNaN();
        assertThat(gauge.serial())
                .contains(
                        new SerialLine(9600, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE));
        assertThat(gauge.channelIndex("battery")).contains(2);
        assertThat(gauge.channelIndex("port-3")).isEmpty();
    }

    @Test
    void theDemoReceiverHasTwoProbesInCelsius() {
        Profile air = ProfileLibrary.get("demo-air");
        assertThat(air.simulated()).isTrue();
        assertThat(air.channels()).extracting(Channel::name).containsExactly("probe-1", "probe-2", "battery");
        assertThat(air.channels()).extracting(Channel::unit).containsExactly(Unit.CELSIUS, Unit.CELSIUS, Unit.PERCENT);
        assertThat(air.channels().get(0).accuracy().halfWidth(50)).isEqualTo(0.3);
        assertThat(air.messages().get(0).framing())
                .isEqualTo(new Framing.LengthField(
                        ByteText.ofHex("A55A"), 2, new Wire(Wire.Kind.UNSIGNED, 1, Wire.Order.LITTLE), 5, 32));
    }

    @Test
    void aRealInstrumentIsNotSimulated() {
        assertThat(ProfileLibrary.get("plain-line").simulated()).isFalse();
    }

    @Test
    void everyShippedProfileIsNamedByItsIdAndHasNoProblems() {
        assertThat(ProfileLibrary.ids()).startsWith("demo-gauge", "demo-air", "plain-line");
        for (String id : ProfileLibrary.ids()) {
            ProfileReading reading =
                    ProfileReader.read(id, ProfileLibrary.document(id).orElseThrow());
            assertThat(reading.problems()).isEmpty();
            assertThat(reading.orThrow().id()).isEqualTo(id);
        }
    }

    @Test
    void anUnknownIdIsAnsweredWithTheKnownOnes() {
        assertThat(ProfileLibrary.find("../secret")).isEmpty();
        assertThat(ProfileLibrary.document("profile.schema")).isEmpty();
        assertThatThrownBy(() -> ProfileLibrary.get("demo"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(
                        "no shipped profile is called \"demo\"; there are demo-gauge, demo-air, plain-line, ");
    }

    /** Digest computed with the sha256sum of GNU coreutils over the same bytes. */
    @Test
    void theDigestIsThatOfTheDocumentsBytes() {
        assertThat(read(SMALL).orThrow().digest())
                .isEqualTo("f05d4de20784868eee3c9e61489a57c4c173852aea4bfa19384fc6fec37d7a99");
    }

    private static final String SMALL = """
            language: 1
            id: small
            name: Small
            framing: {fixed: {start: "AA", length-bytes: 8}}
            checksum: {sum: {width: 16, negated: true}, byte-order: big, covers-from: 1}
            fields:
              - name: x
                at: 1
                type: int24
                byte-order: big
                scale: 2.5
                offset: -40
                special: {over-range: [0x7FFFFF, 0x800000], fault: -1}
              - {name: tail, at: 4, literal: "0D"}
            channels:
              - {id: a, field: x, unit: "[in_i'H2O]", inch-of-water: 60-degF, accuracy: {range-percent: 1, range: 60}}
            examples:
              - {hex: "AA 00 00 64 0D 00 FF 8F", gives: {a: 210}}
            """;

    @Test
    void everyPartOfTheLanguageArrives() {
        Profile small = read(SMALL).orThrow();
        Field field = small.messages().get(0).fields().get(0);
        assertThat(field.place()).isEqualTo(new Field.AtByte(1));
        assertThat(field.content())
                .isEqualTo(new Field.Binary(
                        new Wire(Wire.Kind.SIGNED, 3, Wire.Order.BIG),
                        Optional.empty(),
                        -1L,
                        new Curve.Linear(2.5, -40),
                        Map.of(
                                SampleStatus.OVER_RANGE, List.of(0x7FFFFFL, -0x800000L),
                                SampleStatus.FAULT, List.of(-1L)),
                        false));
        assertThat(small.messages().get(0).fields().get(1).content())
                .isEqualTo(new Field.Literal(ByteText.ofHex("0D")));
        assertThat(small.messages().get(0).checksum())
                .contains(new Checksum(new Checksum.Sum(16, true), Wire.Order.BIG, 1, 0, false, ByteText.EMPTY, 5));
        assertThat(small.channels().get(0).unit()).isEqualTo(Unit.inchOfWaterAt60F());
        assertThat(small.channels().get(0).accuracy().halfWidth(10))
                .isCloseTo(0.6, org.assertj.core.api.Assertions.within(1e-12));
        assertThat(small.serial()).isEmpty();
        assertThat(small.simulated()).isFalse();
    }

    @Test
    void aProfileMayBeWrittenInJson() {
        ProfileReading reading = read("""
                {"language": 1, "id": "j", "name": "J", "framing": {"line": {"end": "\\r\\n", "maximum-bytes": 80}},
                 "fields": [{"name": "p", "pattern": "p=([0-9.]+)", "type": "text"}],
                 "channels": [{"id": "p", "field": "p", "unit": "kPa"}],
                 "examples": [{"text": "x p=1.5 kPa\\r\\n", "gives": {"p": 1.5}}]}
                """);
        assertThat(reading.problems()).isEmpty();
        assertThat(reading.orThrow().channels().get(0).unit().code()).isEqualTo("kPa");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {baud: 300, data-bits: 7, parity: even, stop-bits: 2}         | 300    | 7 | EVEN | TWO            | NONE
            {baud: 115200, parity: odd, stop-bits: 1.5, flow: hardware}   | 115200 | 8 | ODD  | ONE_AND_A_HALF | HARDWARE
            {baud: 50, parity: mark, flow: software}                      | 50     | 8 | MARK | ONE            | SOFTWARE
            """)
    void serialLinesHaveTheirSettings(
            String yaml,
            int baud,
            int dataBits,
            SerialLine.Parity parity,
            SerialLine.StopBits stopBits,
            SerialLine.Flow flow) {
        Profile profile = read(SMALL + "link: {serial: " + yaml + "}\n").orThrow();
        assertThat(profile.serial()).isEqualTo(Optional.of(new SerialLine(baud, dataBits, parity, stopBits, flow)));
    }
}
