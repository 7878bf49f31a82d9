package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ByteText;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Secrets;
import settlemark.profile.Tagged;

/** Frames are taken apart for people. */
final class FrameExplanationTest {
    private static List<FrameExplanation> explain(Profile profile, byte[] bytes) {
        return FrameExplanation.of(profile, 0, bytes, Secrets.NONE);
    }

    @Test
    void everyFieldOfABinaryFrameIsListed() {
        byte[] bytes = Made.hex("00 A55A08010138153A085F009E38 A55A0801020080FFFF5E000000 A55A");
        List<FrameExplanation> frames = explain(ProfileLibrary.get("demo-air"), bytes);
        assertThat(frames).hasSize(4);
        assertThat(frames).extracting(FrameExplanation::offset).containsExactly(0L, 1L, 14L, 27L);
        assertThat(frames).extracting(FrameExplanation::isGood).containsExactly(false, true, false, false);
        assertThat(frames.get(0).rejection()).startsWith("stray bytes from 00");
        assertThat(frames.get(2).rejection()).startsWith("checksum 00 00");
        assertThat(frames.get(2).fields()).isEmpty();
        assertThat(frames.get(3).rejection()).isEqualTo("incomplete: the last 2 bytes are no whole frame");
        FrameExplanation good = frames.get(1);
        assertThat(good.content()).isEqualTo("A5 5A 08 01 01 38 15 3A 08 5F 00 9E 38");
        assertThat(good.fields())
                .extracting(FrameExplanation.FieldReading::name)
                .containsExactly("kind", "sequence", "temperature-1", "temperature-2", "battery", "reserved");
        assertThat(good.fields().get(2))
                .isEqualTo(new FrameExplanation.FieldReading(
                        "temperature-1",
                        5,
                        7,
                        "38 15",
                        "5432",
                        Optional.of(new FrameExplanation.NumberReading(
                                "probe-1", 54.32, Optional.of(Unit.CELSIUS), SampleStatus.OK))));
        assertThat(good.fields().get(0).raw()).isEqualTo("01");
        assertThat(good.fields().get(0).reading()).isEmpty();
        FrameExplanation.NumberReading sequence = good.fields().get(1).reading().orElseThrow();
        assertThat(sequence.channel()).isEmpty();
        assertThat(sequence.unit()).isEmpty();
        assertThat(sequence.value()).isEqualTo(1);
    }

    @Test
    void theFirstLineCountsAndSignsAreTheChannels() {
        byte[] bytes = "P1 +OVER P2 -3.49 B 87\r\nP1\r\n".getBytes(StandardCharsets.US_ASCII);
        List<FrameExplanation> lines = explain(ProfileLibrary.get("demo-gauge"), bytes);
        assertThat(lines).hasSize(2);
        FrameExplanation.FieldReading over = lines.get(0).fields().get(1);
        assertThat(over.raw()).isEqualTo("\"+OVER\"");
        assertThat(over.from()).isEqualTo(3);
        assertThat(over.to()).isEqualTo(8);
        assertThat(over.reading().orElseThrow().status()).isEqualTo(SampleStatus.OVER_RANGE);
        assertThat(lines.get(0).fields().get(3).reading().orElseThrow().value()).isEqualTo(3.49);
        assertThat(lines.get(1).offset()).isEqualTo(24);
        assertThat(lines.get(1).isGood()).isFalse();
    }

    @Test
    void aProtectedFrameIsShownOpenedAndOnlyWhatStandsInIt() {
        Profile profile = Made.message(new Framing.Packet(31))
                .tagged(new Tagged(1, Made.U8, Optional.empty(), java.util.Map.of(2L, 2, 3L, 2, 0x53L, Tagged.SAID)))
                .encrypted()
                .tag("t", 2, Made.scaled(Made.S16, 0.01))
                .tag("h", 3, Made.scaled(Made.U16, 0.01))
                .tag("text", 0x53, new Field.Characters(0))
                .channel("t", Unit.CELSIUS, 1, "t")
                .profile();
        Secrets secrets =
                new Secrets(ByteText.ofHex("5448E68F80A5"), ByteText.ofHex("231d39c1d7cc1ab1aee224cd096db932"));
        byte[] sealed = Made.hex("41 a4 72 66 c9 5f 73 00 11 22 33 78 23 72 14");
        FrameExplanation opened =
                FrameExplanation.of(profile, 0, sealed, secrets).get(0);
        assertThat(opened.content()).isEqualTo("41 02 CA 09 03 BF 13");
        assertThat(opened.fields())
                .extracting(FrameExplanation.FieldReading::name)
                .containsExactly("t", "h");
        assertThat(opened.fields().get(0).reading().orElseThrow().value()).isEqualTo(25.06);
        assertThat(explain(profile, sealed).get(0).rejection()).isEqualTo("the frame is encrypted and needs a key");
        FrameExplanation words = explain(profile, Made.hex("40 53 02 48 69")).get(0);
        assertThat(words.fields().get(0).raw()).isEqualTo("\"Hi\"");
    }

    @Test
    void aChannelIsNamedBesideTheFieldThatGivesItsValueOnly() {
        Profile profile = Made.message(new Framing.Packet(20))
                .at("kind", 0, Made.number(Made.U8))
                .at("fine", 1, Made.number(Made.U8))
                .when("kind", 1L)
                .at("coarse", 2, Made.number(Made.U8))
                .channel("x", Unit.PASCAL, -1, "fine", "coarse")
                .profile();
        assertThat(numbers(profile, "01 07 09")).containsExactly(" 1.0", "x -7.0", " 9.0");
        assertThat(numbers(profile, "00 07 09")).containsExactly(" 0.0", "x -9.0");
    }

    /** Channel and value of each number. */
    private static List<String> numbers(Profile profile, String hex) {
        return explain(profile, Made.hex(hex)).get(0).fields().stream()
                .map(field -> field.reading().orElseThrow())
                .map(reading -> reading.channel() + " " + reading.value())
                .toList();
    }

    @Test
    void whatOnlySilenceEndsIsTakenAsEnded() {
        Profile profile = Made.message(new Framing.IdleGap(1_000_000, 10))
                .at("x", 0, Made.number(Made.U8))
                .shown("x")
                .profile();
        List<FrameExplanation> frames = explain(profile, Made.hex("07"));
        assertThat(frames).hasSize(1);
        assertThat(frames.get(0).fields().get(0).reading().orElseThrow().value())
                .isEqualTo(7);
    }

    @Test
    void textWithAChecksumIsListedWithoutIt() {
        List<FrameExplanation> frames =
                explain(Framed.LINE.profile, "9,1.5,2*3C \r\n9,1.5,2*00\r\n".getBytes(StandardCharsets.US_ASCII));
        int sum = '9' ^ ',' ^ '1' ^ '.' ^ '5' ^ ',' ^ '2';
        assertThat(sum).isEqualTo(0x21);
        assertThat(frames).extracting(FrameExplanation::isGood).containsExactly(false, false);
        FrameExplanation good = explain(Framed.LINE.profile, "9,1.5,2*21 \r\n".getBytes(StandardCharsets.US_ASCII))
                .get(0);
        assertThat(good.fields()).hasSize(2);
        assertThat(good.fields().get(1).hex()).isEqualTo("32");
    }
}
