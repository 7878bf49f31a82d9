package settlemark.decode;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Field;
import settlemark.profile.Wire;

/**
 * A number in bytes. Its raw number is, for integers, their bits and mask applied, sign- or zero-extended; for packed
 * decimal digits and IEEE 11073 numbers the bits as they travel; for IEEE 754 numbers the bits of the double.
 */
final class BinaryNumber implements FieldNumber {
    /** Ways to read whole integers without a mask; anything else goes the general way. */
    private enum Way {
        UINT8,
        INT8,
        UINT16_LITTLE,
        UINT16_BIG,
        INT16_LITTLE,
        INT16_BIG,
        UINT32_LITTLE,
        UINT32_BIG,
        INT32_LITTLE,
        INT32_BIG,
        FLOAT_LITTLE,
        FLOAT_BIG,
        GENERAL
    }

    final Wire wire;
    final Scaling scaling;
    final int shift;
    final int width;
    final long mask;
    private final int way;
    /** The raw number is the number. */
    private final boolean plain;

    private final @Nullable MedicalFloat medical;
    private final long[] specials;
    private final SampleStatus[] meanings;

    BinaryNumber(Field.Binary field, int sign) {
        this.wire = field.wire();
        this.scaling = new Scaling(field.curve(), sign);
        this.shift = field.bits().map(Field.Bits::from).orElse(0);
        this.width = field.bits().map(Field.Bits::count).orElse(8 * wire.bytes());
        this.mask = wire.isInteger() ? field.mask() : -1;
        this.way = way().ordinal();
        this.plain = wire.kind() == Wire.Kind.SIGNED || wire.kind() == Wire.Kind.UNSIGNED && width < 64;
        this.medical = wire.kind() == Wire.Kind.MEDICAL_FLOAT ? MedicalFloat.of(wire.bytes()) : null;
        int count = field.specials().values().stream().mapToInt(List::size).sum();
        this.specials = new long[count];
        this.meanings = new SampleStatus[count];
        int i = 0;
        // In the order of the statuses, so that the first raw number of each comes before its others.
        for (SampleStatus status : SampleStatus.values()) {
            for (long raw : field.specials().getOrDefault(status, List.of())) {
                specials[i] = raw;
                meanings[i++] = status;
            }
        }
    }

    private Way way() {
        boolean whole = width == 8 * wire.bytes() && mask == -1;
        boolean simple = wire.order() == Wire.Order.LITTLE || wire.order() == Wire.Order.BIG;
        String end = wire.bytes() == 1 ? "8" : 8 * wire.bytes() + "_" + wire.order();
        String name = switch (wire.kind()) {
            case SIGNED -> "INT" + end;
            case UNSIGNED -> "UINT" + end;
            case IEEE_FLOAT -> wire.bytes() == 4 ? "FLOAT_" + wire.order() : "";
            case BCD, MEDICAL_FLOAT -> "";
        };
        return Arrays.stream(Way.values())
                .filter(candidate -> whole && simple && candidate.name().equals(name))
                .findFirst()
                .orElse(Way.GENERAL);
    }

    int bytes() {
        return wire.bytes();
    }

    long raw(byte[] bytes, int at) {
        // Constants of the enum in their order: a switch over the enum itself would load a table for each number.
        return switch (way) {
            case 0 -> bytes[at] & 0xFF;
            case 1 -> bytes[at];
            case 2 -> RawBits.int16(bytes, at, true) & 0xFFFF;
            case 3 -> RawBits.int16(bytes, at, false) & 0xFFFF;
            case 4 -> RawBits.int16(bytes, at, true);
            case 5 -> RawBits.int16(bytes, at, false);
            case 6 -> RawBits.int32(bytes, at, true) & 0xFFFFFFFFL;
            case 7 -> RawBits.int32(bytes, at, false) & 0xFFFFFFFFL;
            case 8 -> RawBits.int32(bytes, at, true);
            case 9 -> RawBits.int32(bytes, at, false);
            case 10 -> doubleBits(RawBits.int32(bytes, at, true));
            case 11 -> doubleBits(RawBits.int32(bytes, at, false));
            default -> general(RawBits.bits(wire, bytes, at));
        };
    }

    private static long doubleBits(int floatBits) {
        return Double.doubleToLongBits(Float.intBitsToFloat(floatBits));
    }

    private long general(long bits) {
        int unused = 64 - width;
        return switch (wire.kind()) {
            case SIGNED -> bits >>> shift << unused >> unused & mask;
            case UNSIGNED, BCD -> bits >>> shift << unused >>> unused & mask;
            case MEDICAL_FLOAT -> bits;
            case IEEE_FLOAT ->
                switch (wire.bytes()) {
                    case 2 -> Double.doubleToLongBits(HalfPrecision.value(bits));
                    case 4 -> doubleBits((int) bits);
                    default -> Double.doubleToLongBits(Double.longBitsToDouble(bits));
                };
        };
    }

    /** The number of a raw number before its curve; NaN or infinite where it is none. */
    double number(long raw) {
        return switch (wire.kind()) {
            case SIGNED -> raw;
            case UNSIGNED -> unsigned(raw);
            case BCD -> PackedDecimal.value(raw);
            case MEDICAL_FLOAT -> medical == null ? Double.NaN : medical.value(raw);
            case IEEE_FLOAT -> {
                double value = Double.longBitsToDouble(raw);
                // Infinite is no range that the gauge states: it is a fault, unless the profile gives it a meaning.
                yield Double.isFinite(value) ? value : Double.NaN;
            }
        };
    }

    /** Halved with the lowest bit kept for rounding: the largest 64-bit numbers have no signed form. */
    private static double unsigned(long raw) {
        return raw >= 0 ? raw : (double) (raw >>> 1 | raw & 1) * 2;
    }

    /** The meaning of a raw number that is no measurement by the profile, null where it has none. */
    @Nullable
    SampleStatus special(long raw) {
        for (int i = 0; i < specials.length; i++) {
            if (specials[i] == raw) {
                return meanings[i];
            }
        }
        return null;
    }

    SampleStatus statusOf(long raw) {
        @Nullable SampleStatus special = special(raw);
        return special != null ? special : FrameValues.statusOf(scaling.value(number(raw)));
    }

    /** Fills in a channel's value from the bytes at an offset. */
    void read(byte[] bytes, int at, int channel, FrameValues out) {
        long raw = raw(bytes, at);
        if (specials.length > 0) {
            @Nullable SampleStatus special = special(raw);
            if (special != null) {
                out.status(channel, special);
                return;
            }
        }
        out.number(channel, scaling.value(plain ? (double) raw : number(raw)));
    }

    @Override
    public @Nullable String read(byte[] bytes, int from, int to, int channel, FrameValues out) {
        read(bytes, from, channel, out);
        return null;
    }

    @Override
    public boolean isOneOf(long[] raws, byte[] bytes, int from, int to) {
        long raw = raw(bytes, from);
        for (long candidate : raws) {
            if (candidate == raw) {
                return true;
            }
        }
        return false;
    }

    @Override
    public boolean says(SampleStatus status) {
        return BinaryCodes.of(this, status).isPresent();
    }

    @Override
    public String shownRaw(byte[] bytes, int from, int to) {
        long raw = raw(bytes, from);
        return switch (wire.kind()) {
            case SIGNED -> Long.toString(raw);
            case UNSIGNED -> Long.toUnsignedString(raw);
            case BCD, MEDICAL_FLOAT -> "0x" + Long.toHexString(raw).toUpperCase(Locale.ROOT);
            case IEEE_FLOAT -> Double.toString(Double.longBitsToDouble(raw));
        };
    }

    /** Raw numbers that stand for a status by the profile. */
    long[] specialsOf(SampleStatus status) {
        long[] found = new long[specials.length];
        int count = 0;
        for (int i = 0; i < specials.length; i++) {
            if (meanings[i] == status) {
                found[count++] = specials[i];
            }
        }
        return Arrays.copyOf(found, count);
    }
}
