package settlemark.decode;

import java.util.List;
import java.util.function.Supplier;
import settlemark.measure.Unit;
import settlemark.profile.ByteText;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Profile;
import settlemark.profile.Tagged;

/** A frame of each kind of framing that a stream can have, with a counter, two channels and a checksum. */
enum Framed {
    LINE(() -> Made.message(new Framing.Line(ByteText.ofHex("0D0A"), 40))
            .columns(',', 3)
            .checksum(new settlemark.profile.Checksum(
                    new settlemark.profile.Checksum.Xor(),
                    settlemark.profile.Wire.Order.BIG,
                    0,
                    0,
                    true,
                    ByteText.ofHex("2A"),
                    1))
            .field("p", new Field.InColumn(1), Made.decimal())
            .field("q", new Field.InColumn(2), Made.decimal())
            .shown("p", "q")
            .profile()),
    FIXED(() -> binary(new Framing.Fixed(ByteText.ofHex("A55A"), 9), 2)),
    FIXED_WITHOUT_START(() -> binary(new Framing.Fixed(ByteText.EMPTY, 7), 0)),
    LENGTH(() -> binary(new Framing.LengthField(ByteText.ofHex("A5"), 1, Made.U8, 0, 24), 2)),
    LENGTH_WITHOUT_START(() -> binary(new Framing.LengthField(ByteText.EMPTY, 0, Made.U8, 0, 24), 1)),
    STX_ETX(() -> Made.message(new Framing.Marked(ByteText.ofHex("02"), ByteText.ofHex("03"), new Framing.Plain(), 30))
            .columns(';', 0)
            .checksum(new settlemark.profile.Checksum(
                    new settlemark.profile.Checksum.Sum(8, true),
                    settlemark.profile.Wire.Order.BIG,
                    0,
                    0,
                    true,
                    ByteText.EMPTY,
                    1))
            .field("p", new Field.InColumn(0), Made.decimal())
            .field(
                    "q",
                    new Field.InColumn(1),
                    new Field.Decimal(
                            settlemark.profile.Curve.IDENTITY, java.util.Optional.of(2), true, java.util.Map.of()))
            .field("end", new Field.InColumn(2), Made.literal("45"))
            .shown("p", "q")
            .profile()),
    DLE_MARKS(() -> binary(
            new Framing.Marked(
                    ByteText.ofHex("1002"),
                    ByteText.ofHex("1003"),
                    new Framing.Stuffed((byte) 0x10, List.of((byte) 0x10), List.of((byte) 0x10)),
                    24),
            0)),
    FLAGS(() -> binary(
            new Framing.Marked(
                    ByteText.ofHex("7E"), ByteText.ofHex("7E"), new Framing.Flipped((byte) 0x7D, (byte) 0x20), 24),
            0)),
    SLIP(() -> binary(Framing.Marked.slip(24), 0)),
    COBS(() -> binary(new Framing.Cobs(24), 0)),
    IDLE_GAP(() -> binary(new Framing.IdleGap(5_000_000, 24), 0)),
    TAGGED_SLIP(() -> Made.message(Framing.Marked.slip(40))
            .tagged(new Tagged(1, Made.U8, java.util.Optional.of(Made.U8), java.util.Map.of(9L, 2, 8L, Tagged.SAID)))
            .checksum(Made.MODBUS_CRC)
            .at("kind", 0, Made.literal("C0"))
            .tag("p", 9, Made.number(Made.S16))
            .field("q", new Field.ByTag(7, 1, 1), Made.number(Made.S16))
            .field("unused", new Field.ByTag(8, 0, 0), new Field.Characters(0))
            .channel("p", Unit.PASCAL, 1, "p")
            .channel("q", Unit.PASCAL, -1, "q")
            .profile());

    final Profile profile;

    Framed(Supplier<Profile> made) {
        profile = made.get();
    }

    private static Profile binary(Framing framing, int at) {
        return Made.message(framing)
                .checksum(Made.MODBUS_CRC)
                .at("p", at, Made.number(Made.S16))
                .at("q", at + 2, Made.number(Made.wire(settlemark.profile.Wire.Kind.UNSIGNED, 3)))
                .shown("p", "q")
                .profile();
    }
}
