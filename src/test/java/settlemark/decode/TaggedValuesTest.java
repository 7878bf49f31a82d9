package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Example;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;
import settlemark.profile.Source;
import settlemark.profile.Tagged;
import settlemark.profile.Wire;

/** Frames of tagged values. */
final class TaggedValuesTest {
    private static final SampleStatus OK = SampleStatus.OK;

    /** Lengths by tag as in the open BTHome format, version 2. */
    private static final Tagged BY_TAG = new Tagged(
            1, Made.U8, Optional.empty(), Map.of(0x00L, 1, 0x01L, 1, 0x02L, 2, 0x03L, 2, 0x53L, Tagged.SAID));

    private static Made advert() {
        return Made.message(new Framing.Packet(31))
                .from(new Source.ServiceData(new java.util.UUID(0, 0)))
                .tagged(BY_TAG)
                .field(
                        "count",
                        new Field.ByTag(0, 0, 0),
                        new Field.Binary(
                                Made.U8, Optional.empty(), -1, settlemark.profile.Curve.IDENTITY, Map.of(), true))
                .tag("battery", 1, Made.number(Made.U8))
                .tag("t1", 2, Made.scaled(Made.S16, 0.01))
                .field("t2", new Field.ByTag(2, 1, 0), Made.scaled(Made.S16, 0.01))
                .tag("h", 3, Made.scaled(Made.U16, 0.01))
                .tag("text", 0x53, new Field.Characters(0))
                .channel("battery", Unit.PERCENT, 1, "battery")
                .channel("t1", Unit.CELSIUS, 1, "t1")
                .channel("t2", Unit.CELSIUS, 1, "t2")
                .channel("h", Unit.PERCENT, 1, "h")
                .fact("text", "text");
    }

    private static Recorder decode(Profile profile, String hex) {
        return Recorder.of(profile, new Chunk(1, Made.hex(hex)));
    }

    /** 25.06 degC and 50.55 %: the values of the format's own examples. */
    @Test
    void onlyWhatStandsInAFrameIsGiven() {
        Recorder recorder = decode(advert().profile(), "40 02 CA 09 03 BF 13");
        assertThat(recorder.rejections).isEmpty();
        assertThat(recorder.samples).hasSize(2);
        assertThat(recorder.values(1)).containsExactly(25.06);
        assertThat(recorder.values(3)).containsExactly(50.55);
        assertThat(decode(advert().profile(), "40").samples).isEmpty();
    }

    @Test
    void theSecondOfTwoValuesWithOneTagIsAnother() {
        Recorder recorder = decode(advert().profile(), "40 01 5D 02 CA 09 02 C4 09 53 05 48 65 6C 6C 6F");
        assertThat(recorder.values(0)).containsExactly(93.0);
        assertThat(recorder.values(1)).containsExactly(25.06);
        assertThat(recorder.values(2)).containsExactly(25.0);
        assertThat(recorder.facts).containsExactly("0: Hello");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            40 77 01             | unknown tag 0x77 at offset 1, whose length nothing says
            40 02 CA             | tag 0x02 at offset 1 has 2 bytes where the frame has 1
            40 01 5D 02          | tag 0x02 at offset 3 has 2 bytes where the frame has 0
            40 53                | the frame ends before the length of tag 0x53 at offset 1
            40 53 05 48          | tag 0x53 at offset 1 has 5 bytes where the frame has 1
            """)
    void aFrameThatIsNotCutWellIsRejected(String hex, String reason) {
        Recorder recorder = decode(advert().profile(), hex);
        assertThat(recorder.samples).isEmpty();
        assertThat(recorder.reasons()).containsExactly(reason);
    }

    @Test
    void whatStandsBeforeAnUnknownTagCounts() {
        Recorder recorder = decode(advert().profile(), "40 02 CA 09 77 01 02 03");
        assertThat(recorder.values(1)).containsExactly(25.06);
        assertThat(recorder.rejections).isEmpty();
    }

    @Test
    void anAdvertisementHeardTwiceIsNoLoss() {
        ProbeDecoder decoder = new ProbeDecoder(advert().profile());
        Recorder recorder = new Recorder();
        for (String hex : List.of("40 00 09 01 01", "40 00 09 01 01", "40 00 0A 01 01", "40 00 0D 01 01", "40 01 01")) {
            decoder.accept(new Chunk(1, Made.hex(hex)), recorder);
        }
        assertThat(decoder.missedFrames()).isEqualTo(2);
        assertThat(decoder.acceptedFrames()).isEqualTo(5);
    }

    private static Profile written(Wire tag, Wire length) {
        return Made.message(new Framing.Packet(100))
                .tagged(new Tagged(2, tag, Optional.of(length), Map.of(5L, 3)))
                .tag("a", 0x11, Made.number(Made.S16))
                .field("b", new Field.ByTag(0x12, 0, 1), Made.number(Made.U8))
                .tag("c", 5, Made.number(Made.wire(Wire.Kind.UNSIGNED, 3)))
                .shown("a", "b", "c")
                .profile();
    }

    @Test
    void lengthsMayStandInTheFrame() {
        Wire big = new Wire(Wire.Kind.UNSIGNED, 2, Wire.Order.BIG);
        Profile profile = written(big, big);
        Recorder recorder = decode(profile, "0000 0011 0002 FEFF 0099 0000 0012 0003 000700 0005 010000");
        assertThat(recorder.rejections).isEmpty();
        assertThat(recorder.values(0)).containsExactly(-2.0);
        assertThat(recorder.values(1)).containsExactly(7.0);
        assertThat(recorder.values(2)).containsExactly(1.0);
        assertThat(decode(profile, "0000 00").reasons()).containsExactly("the frame ends within a tag at offset 2");
        assertThat(decode(profile, "0000 0011 00").reasons())
                .containsExactly("the frame ends before the length of tag 0x0011 at offset 2");
        assertThat(decode(profile, "0000 0011 FFFF 00").reasons())
                .containsExactly("tag 0x0011 at offset 2 has 65535 bytes where the frame has 1");
        assertThat(decode(profile, "0000 0011 0001 00").reasons())
                .containsExactly("a ends at byte 8 where there are 7");
        assertThat(decode(profile, "00").reasons()).containsExactly("the frame has 1 bytes where the fields need 2");
    }

    @Test
    void anyChannelsAreWrittenAndNoOthers() {
        long seed = System.nanoTime();
        System.out.println("TaggedValuesTest seed " + seed);
        Random random = new Random(seed);
        Profile plain = advert().profile();
        Profile shown = advert().good("40 01 05 02 CA 09 02 00 00 03 BF 13 53 01 41", Map.of("battery", 5.0))
                .profile();
        Profile lengths = written(Made.U8, Made.U16);
        for (Profile profile : List.of(plain, shown, lengths)) {
            Encoder encoder = new Encoder(profile);
            int channels = profile.sources().size();
            for (int i = 0; i < 2_000; i++) {
                @Nullable SampleStatus[] statuses = new SampleStatus[channels];
                double[] values = new double[channels];
                for (int c = 0; c < channels; c++) {
                    statuses[c] = random.nextBoolean() ? OK : null;
                    values[c] = random.nextInt(100);
                }
                if (channels == 4 && statuses[1] == null) {
                    statuses[2] = null; // a second value needs a first
                }
                Recorder recorder = Recorder.of(profile, new Chunk(1, encoder.encode(0, values, statuses)));
                for (int c = 0; c < channels; c++) {
                    assertThat(recorder.values(c))
                            .as("seed %d", seed)
                            .isEqualTo(statuses[c] == null ? List.of() : List.of(values[c]));
                }
            }
        }
    }

    @Test
    void valuesAreWrittenInTheOrderOfTheirTagsWithWords() {
        Profile profile = advert().profile();
        byte[] frame = new Encoder(profile)
                .encode(0, new double[] {93, 25.06, 0, 50.55}, new SampleStatus[] {OK, OK, null, OK}, new String[] {"Hi"
                });
        assertThat(frame).isEqualTo(Made.hex("00 01 5D 02 CA 09 03 BF 13 53 02 48 69"));
    }

    /**
     * Encrypted frames. Source: the format's page on encryption (key, address and values; the first with counter
     * 00 11 22 33 as sent, the second with 33 22 11 00), found in two independent open implementations' tests.
     */
    @ParameterizedTest
    @CsvSource({"41 a4 72 66 c9 5f 73 00 11 22 33 78 23 72 14", "41 e4 45 f3 c9 96 2b 33 22 11 00 6c 7c 45 19"})
    void encryptedAdvertisementsOpenWithTheirKey(String hex) {
        Secrets secrets = secrets("231d39c1d7cc1ab1aee224cd096db932");
        Profile profile = advert().encrypted()
                .example(
                        hex,
                        Map.of(
                                "t1", new Example.Expected(25.06, OK),
                                "h", new Example.Expected(50.55, OK)),
                        Map.of(),
                        Set.of("battery", "t2"),
                        "",
                        Made.with(secrets))
                .bad(hex, "needs a key", Example.Circumstances.NONE)
                .bad(hex, "does not open", Made.with(secrets("00112233445566778899aabbccddeeff")))
                .profile();
        assertThat(ProfileProof.of(profile).faults()).isEmpty();
        // Written again with the same counter it is the same frame, bit for bit; the next one has the next counter.
        Encoder encoder = new Encoder(profile, secrets);
        double[] values = {0, 25.06, 0, 50.55};
        @Nullable SampleStatus[] statuses = {null, OK, null, OK};
        assertThat(encoder.encode(0, values, statuses)).isEqualTo(Made.hex(hex));
        byte[] next = encoder.encode(0, values, statuses);
        assertThat(next).isNotEqualTo(Made.hex(hex)).hasSize(15);
        Recorder recorder = new Recorder();
        new ProbeDecoder(profile, secrets).accept(new Chunk(1, next), recorder);
        assertThat(recorder.values(1)).containsExactly(25.06);
        assertThat(next[7]).isEqualTo((byte) (Made.hex(hex)[7] + 1));
        // Without secrets the frame is plain.
        assertThat(new Encoder(profile).encode(0, values, statuses)).isEqualTo(Made.hex("40 02 CA 09 03 BF 13"));
    }

    private static Secrets secrets(String key) {
        return new Secrets(settlemark.profile.ByteText.ofHex("5448E68F80A5"), settlemark.profile.ByteText.ofHex(key));
    }

    @Test
    void anEncryptedFrameWithoutAllThatOpensItIsRejected() {
        Profile profile = advert().encrypted().profile();
        String hex = "41 a4 72 66 c9 5f 73 00 11 22 33 78 23 72 14";
        assertThat(decode(profile, hex).reasons()).containsExactly("the frame is encrypted and needs a key");
        Recorder recorder = new Recorder();
        Secrets keyOnly = new Secrets(
                settlemark.profile.ByteText.EMPTY,
                settlemark.profile.ByteText.ofHex("231d39c1d7cc1ab1aee224cd096db932"));
        new ProbeDecoder(profile, keyOnly).accept(new Chunk(1, Made.hex(hex)), recorder);
        ProbeDecoder decoder = new ProbeDecoder(profile, secrets("231d39c1d7cc1ab1aee224cd096db932"));
        for (int bit = 0; bit < 8 * 15; bit++) {
            byte[] changed = Made.hex(hex);
            changed[bit / 8] ^= (byte) (1 << bit % 8);
            if (bit > 0) {
                decoder.accept(new Chunk(1, changed), recorder);
            }
        }
        decoder.accept(new Chunk(1, Made.hex("41 00 11 22 33 78 23 72")), recorder);
        assertThat(recorder.samples).isEmpty();
        assertThat(recorder.reasons()).hasSize(121);
        assertThat(recorder.reasons().get(0)).contains("needs the device's address");
        assertThat(recorder.reasons().subList(1, 120)).allMatch(reason -> reason.contains("its tag is wrong"));
        assertThat(recorder.reasons().get(120)).isEqualTo("an encrypted frame has at least 9 bytes, got 8");
        // A plain frame of the same device is taken as it is.
        decoder.accept(new Chunk(1, Made.hex("40 01 5D")), recorder);
        assertThat(recorder.values(0)).containsExactly(93.0);
        assertThat(recorder.reasons())
                .noneMatch(reason -> reason.toLowerCase(java.util.Locale.ROOT).contains("231d39"));
    }

    @Test
    void aSecondValueWithoutAFirstIsRefused() {
        Encoder encoder = new Encoder(advert().profile());
        assertThatThrownBy(() -> encoder.encode(0, new double[4], new SampleStatus[] {null, null, OK, null}))
                .hasMessage("no frame can leave out t1 and hold what comes after it under the same tag");
        assertThatThrownBy(() ->
                        encoder.encode(0, new double[4], new SampleStatus[] {SampleStatus.FAULT, null, null, null}))
                .hasMessage("the profile has no code for FAULT in channel 0");
    }
}
