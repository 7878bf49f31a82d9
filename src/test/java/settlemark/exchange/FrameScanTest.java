package settlemark.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import settlemark.profile.ByteText;
import settlemark.profile.Checksum;
import settlemark.profile.Framing;
import settlemark.profile.Source;
import settlemark.profile.Wire;

/** Where a whole frame stands in what came, by each kind of framing. */
final class FrameScanTest {
    private static final Optional<Checksum> NONE = Optional.empty();
    private static final Optional<Checksum> XOR =
            Optional.of(new Checksum(new Checksum.Xor(), Wire.Order.BIG, 0, 0, false, ByteText.EMPTY, 0));
    private static final Framing LENGTH =
            new Framing.LengthField(ByteText.ofHex("A5"), 1, new Wire(Wire.Kind.UNSIGNED, 1, Wire.Order.BIG), 2, 10);
    private static final Framing LONG_LENGTH = new Framing.LengthField(
            ByteText.ofHex("A5"), 1, new Wire(Wire.Kind.UNSIGNED, 4, Wire.Order.BIG_WORDS_SWAPPED), 0, 20);
    private static final Framing FLIPPED = new Framing.Marked(
            ByteText.ofHex("7E"), ByteText.ofHex("7E"), new Framing.Flipped((byte) 0x7D, (byte) 0x20), 20);

    @TestFactory
    Stream<DynamicTest> frames() {
        return Stream.of(
                row("line", Profiles.LINE, NONE, text("12\n3"), 0, 3),
                row("blank lines before", Profiles.LINE, NONE, text("\r\n \n12\n"), 4, 7),
                row("no end yet", Profiles.LINE, NONE, text("12"), -1, 0),
                row("too long a line", new Framing.Line(text("\n"), 4), NONE, text("12345\n12\n"), 6, 9),
                row("wrong checksum of a line", Profiles.LINE, XOR, text("abX\nabY\n"), -1, 0),
                row("checksum of a line", Profiles.LINE, XOR, text("abX\nab" + (char) ('a' ^ 'b') + "\n"), 4, 8),
                row("fixed", new Framing.Fixed(ByteText.ofHex("A5"), 3), NONE, hex("00 A5 01 02 03"), 1, 4),
                row("fixed, not whole", new Framing.Fixed(ByteText.ofHex("A5"), 3), NONE, hex("00 A5 01"), -1, 0),
                row("fixed, false start", new Framing.Fixed(ByteText.ofHex("A5"), 3), XOR, hex("A5 01 A5 01 A4"), 2, 5),
                row("length", LENGTH, NONE, hex("00 A5 01 07 09"), 1, 4),
                row("length too long", LENGTH, NONE, hex("A5 FF A5 01 07"), 2, 5),
                row("a good frame within a corrupted length", LENGTH, XOR, hex("A5 08 A5 02 01 A6"), 2, 6),
                row("swapped words", LONG_LENGTH, NONE, hex("A5 00 07 00 00 01 02"), 0, 7),
                row(
                        "marks",
                        new Framing.Marked(ByteText.ofHex("02"), ByteText.ofHex("03"), new Framing.Plain(), 9),
                        NONE,
                        hex("03 02 31 03"),
                        1,
                        4),
                row("empty between marks", FLIPPED, NONE, hex("7E 7E 01 7E"), 1, 4),
                row("escaped checksum", FLIPPED, XOR, hex("7E 01 00 7E 7D 5E 7D 5E 00 7E"), 3, 10),
                row("slip", Framing.Marked.slip(20), XOR, hex("01 00 C0 DB DC DB DC 00 C0"), 3, 9),
                row("slip, an escape of nothing", Framing.Marked.slip(20), XOR, hex("DB 01 C0 05 05 C0"), 3, 6),
                row("cobs", new Framing.Cobs(20), NONE, hex("00 02 11 00"), 1, 4),
                row("silence", new Framing.IdleGap(5_000_000, 4), NONE, hex("01 02"), 0, 2));
    }

    private static DynamicTest row(
            String name, Framing framing, Optional<Checksum> checksum, ByteText bytes, int from, int to) {
        return DynamicTest.dynamicTest(name, () -> {
            FrameScan scan = FrameScan.of(Profiles.message("m", new Source.Unasked(), framing, checksum));
            Look look = scan.find(bytes.toBytes(), 0, bytes.length());
            assertThat(look).isEqualTo(from < 0 ? Look.MORE : Look.good(from, to));
        });
    }

    private static ByteText text(String text) {
        return ByteText.of(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static ByteText hex(String hex) {
        return ByteText.ofHex(hex);
    }

    @TestFactory
    Stream<DynamicTest> quotes() {
        return Stream.of(
                        List.of("OK\r\n", "\"OK\\r\\n\""),
                        List.of("\u0001A", "01 41"),
                        List.of("x".repeat(50), "\"" + "x".repeat(40) + "\" and 10 bytes more"))
                .map(row -> DynamicTest.dynamicTest(
                        row.get(1),
                        () -> assertThat(Quoted.of(row.get(0).getBytes(StandardCharsets.ISO_8859_1)))
                                .isEqualTo(row.get(1))));
    }
}
