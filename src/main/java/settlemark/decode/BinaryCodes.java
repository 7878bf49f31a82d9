package settlemark.decode;

import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Wire;

/** The way back of a {@link BinaryNumber}: the raw number of a value or a status, and its bits. */
final class BinaryCodes {
    /** More than a profile lists. */
    private static final int MOST_SPECIALS = 10_000;

    private BinaryCodes() {}

    /** The raw number that stands for a status, by the profile or by the number's own kind. */
    static OptionalLong of(BinaryNumber number, SampleStatus status) {
        long[] specials = number.specialsOf(status);
        if (specials.length > 0) {
            return OptionalLong.of(specials[0]);
        }
        for (long raw : ownCodes(number)) {
            if (number.statusOf(raw) == status) {
                return OptionalLong.of(raw);
            }
        }
        return OptionalLong.empty();
    }

    private static long[] ownCodes(BinaryNumber number) {
        Wire wire = number.wire;
        if (wire.kind() == Wire.Kind.IEEE_FLOAT) {
            return new long[] {Double.doubleToLongBits(Double.NaN), Double.doubleToLongBits(Double.POSITIVE_INFINITY)};
        }
        if (wire.kind() == Wire.Kind.MEDICAL_FLOAT) {
            MedicalFloat medical = MedicalFloat.of(wire.bytes());
            return new long[] {medical.notANumber(), medical.infinity(false), medical.infinity(true)};
        }
        double[] beyond = number.scaling.rawsBeyond();
        long[] codes = new long[beyond.length + 1];
        int count = 0;
        for (double raw : beyond) {
            @Nullable Long integer = integer(number, raw);
            codes[count++] = integer == null ? 0 : code(number, integer);
        }
        // All digits 15, where digits of ten mean anything.
        codes[count] = wire.kind() == Wire.Kind.BCD ? -1L >>> 64 - number.width & number.mask : 0;
        return codes;
    }

    /** Writes a measurement, rounded to the wire's steps; what does not fit becomes over or under range. */
    static void write(BinaryNumber number, double value, byte[] bytes, int at) {
        double hint = number.number(number.raw(bytes, at));
        double raw = number.scaling.raw(value, Double.isFinite(hint) ? hint : 0);
        long bits = nearest(number, raw);
        boolean carried = number.scaling.reaches(value) && carries(number, raw);
        if (!carried) {
            OptionalLong beyond = of(number, number.scaling.beyond(value));
            bits = beyond.isPresent() ? beyond.getAsLong() : bits;
        }
        writeRaw(number, bits, bytes, at);
    }

    /** Whether the nearest raw number is a measurement that lies within half a step. */
    private static boolean carries(BinaryNumber number, double raw) {
        Wire wire = number.wire;
        if (wire.kind() == Wire.Kind.IEEE_FLOAT) {
            return Math.abs(raw) <= largestFloat(wire.bytes());
        }
        if (wire.kind() == Wire.Kind.MEDICAL_FLOAT) {
            return Double.isFinite(number.number(MedicalFloat.of(wire.bytes()).bits(clamped(raw))));
        }
        @Nullable Long integer = integer(number, stepped(number, raw));
        return integer != null && number.special(code(number, integer)) == null;
    }

    private static double clamped(double raw) {
        return Math.max(-Double.MAX_VALUE, Math.min(Double.MAX_VALUE, raw));
    }

    private static double largestFloat(int bytes) {
        return switch (bytes) {
            case 2 -> HalfPrecision.LARGEST;
            case 4 -> Float.MAX_VALUE;
            default -> Double.MAX_VALUE;
        };
    }

    /** The raw number nearest to a number that is none of the profile's special ones. */
    private static long nearest(BinaryNumber number, double raw) {
        Wire wire = number.wire;
        if (wire.kind() == Wire.Kind.IEEE_FLOAT) {
            double largest = largestFloat(wire.bytes());
            return floatAside(number, Math.max(-largest, Math.min(largest, raw)));
        }
        if (wire.kind() == Wire.Kind.MEDICAL_FLOAT) {
            return MedicalFloat.of(wire.bytes()).bits(clamped(raw));
        }
        @Nullable Long fitting = integer(number, stepped(number, raw));
        long integer = fitting != null ? fitting : raw > 0 ? most(number) : least(number);
        long step = raw > 0 ? -step(number) : step(number);
        for (int tried = 0; tried < MOST_SPECIALS && number.special(code(number, integer)) != null; tried++) {
            integer += step;
        }
        return code(number, integer);
    }

    /** As the wire rounds it, and one step nearer to zero where it would be a special number. */
    private static long floatAside(BinaryNumber number, double raw) {
        long bits = rounded(number.wire.bytes(), raw);
        if (number.special(bits) == null || raw == 0) {
            return bits;
        }
        double step = number.wire.bytes() == 8 ? Math.ulp(raw) : number.wire.bytes() == 4 ? Math.ulp((float) raw) : 0;
        double half = Math.max(Math.scalb(1.0, Math.getExponent(raw) - 10), 0x1p-24);
        return rounded(number.wire.bytes(), raw - Math.signum(raw) * (step == 0 ? half : step));
    }

    private static long rounded(int bytes, double value) {
        return Double.doubleToLongBits(
                switch (bytes) {
                    case 2 -> HalfPrecision.value(HalfPrecision.bits(value));
                    case 4 -> (float) value;
                    default -> value;
                });
    }

    private static double stepped(BinaryNumber number, double raw) {
        double step = step(number);
        return Math.rint(raw / step) * step;
    }

    private static long step(BinaryNumber number) {
        return number.mask == -1 || number.mask == 0 ? 1 : Long.lowestOneBit(number.mask);
    }

    private static boolean isSigned(BinaryNumber number) {
        return number.wire.kind() == Wire.Kind.SIGNED && number.mask == -1;
    }

    private static long least(BinaryNumber number) {
        return isSigned(number) ? Long.MIN_VALUE >> 64 - number.width : 0;
    }

    /** The largest integer, as an unsigned long where the number is unsigned. */
    private static long most(BinaryNumber number) {
        if (number.wire.kind() == Wire.Kind.BCD) {
            return PackedDecimal.most(number.width);
        }
        return isSigned(number) ? Long.MAX_VALUE >> 64 - number.width : -1L >>> 64 - number.width & number.mask;
    }

    /** A whole number as an integer, unsigned where the number is; null where it does not fit. */
    private static @Nullable Long integer(BinaryNumber number, double raw) {
        double beyond = Math.scalb(1.0, isSigned(number) ? number.width - 1 : number.width);
        if (!(raw >= least(number) && raw < beyond)) {
            return null;
        }
        long integer = raw < 0x1p63 ? (long) raw : (long) (raw - 0x1p63) | Long.MIN_VALUE;
        boolean unsigned = !isSigned(number);
        return unsigned && Long.compareUnsigned(integer, most(number)) > 0 ? null : integer;
    }

    /** The raw number of an integer. */
    private static long code(BinaryNumber number, long integer) {
        return number.wire.kind() == Wire.Kind.BCD ? PackedDecimal.bits(integer) : integer & number.mask;
    }

    /** Writes a raw number; bits of the integer around it that are not its own stay. */
    static void writeRaw(BinaryNumber number, long raw, byte[] bytes, int at) {
        Wire wire = number.wire;
        long bits = raw;
        if (wire.kind() == Wire.Kind.IEEE_FLOAT) {
            double value = Double.longBitsToDouble(raw);
            bits = switch (wire.bytes()) {
                case 2 -> HalfPrecision.bits(value);
                case 4 -> Float.floatToIntBits((float) value);
                default -> raw;
            };
        } else if (wire.isInteger()) {
            long own = (-1L >>> 64 - number.width & number.mask) << number.shift;
            bits = RawBits.bits(wire, bytes, at) & ~own | raw << number.shift & own;
        }
        RawBits.writeBits(bits, bytes, at, wire);
    }
}
