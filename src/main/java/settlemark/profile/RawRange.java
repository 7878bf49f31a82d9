package settlemark.profile;

import java.math.BigInteger;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/**
 * Which raw numbers a binary field can have, and how the document's numbers become them.
 *
 * @param kind what the bits mean
 * @param bits how many there are
 */
record RawRange(Wire.Kind kind, int bits) {
    static RawRange of(Field.Binary binary) {
        int bits = binary.bits().map(Field.Bits::count).orElse(8 * binary.wire().bytes());
        return new RawRange(binary.wire().kind(), bits);
    }

    /** What a message says was expected. */
    String expected() {
        return switch (kind) {
            case IEEE_FLOAT -> "a number, \"nan\", \"inf\" or \"-inf\"";
            case BCD ->
                "a whole number of " + bits / 4 + " decimal digits, or what travels in quotes, such as \""
                        + "F".repeat(bits / 4) + "\"";
            default -> "a whole number of " + bits + (bits == 1 ? " bit" : " bits");
        };
    }

    /** The raw number, empty where the field cannot have it. */
    Optional<Long> raw(JsonNode value) {
        if (kind == Wire.Kind.IEEE_FLOAT) {
            return ieee(value).map(this::rounded).map(Double::doubleToLongBits);
        }
        if (kind == Wire.Kind.BCD) {
            return digits(value);
        }
        if (!value.isIntegralNumber()) {
            return Optional.empty();
        }
        BigInteger raw = value.bigIntegerValue();
        // The bits of a negative number may be written as they travel, such as 0x8000.
        boolean fits = raw.signum() >= 0 ? raw.bitLength() <= bits : kind == Wire.Kind.SIGNED && raw.bitLength() < bits;
        if (!fits) {
            return Optional.empty();
        }
        int unused = 64 - bits;
        long low = raw.longValue() << unused;
        return Optional.of(kind == Wire.Kind.SIGNED ? low >> unused : low >>> unused);
    }

    /** Four bits each, as they travel. */
    private Optional<Long> digits(JsonNode value) {
        int count = bits / 4;
        if (value.isString()) {
            String hex = value.asString();
            return hex.matches("[0-9A-Fa-f]{" + count + "}")
                    ? Optional.of(Long.parseUnsignedLong(hex, 16))
                    : Optional.empty();
        }
        boolean fits = value.isIntegralNumber()
                && value.bigIntegerValue().signum() >= 0
                && value.bigIntegerValue().compareTo(BigInteger.TEN.pow(count)) < 0;
        return fits ? Optional.of(Long.parseUnsignedLong(value.bigIntegerValue().toString(), 16)) : Optional.empty();
    }

    private double rounded(double number) {
        return switch (bits) {
            case 16 -> half(number);
            case 32 -> (float) number;
            default -> number;
        };
    }

    /** The nearest number in half precision, IEEE 754-2019: 11 bits of precision, exponents -14 to 15. */
    private static double half(double number) {
        if (number == 0 || !Double.isFinite(number)) {
            return number;
        }
        double step = Math.scalb(1.0, Math.max(Math.getExponent(number), -14) - 10);
        double nearest = Math.rint(number / step) * step;
        return Math.abs(nearest) < 0x1p16 ? nearest : Math.copySign(Double.POSITIVE_INFINITY, number);
    }

    private static Optional<Double> ieee(JsonNode value) {
        if (value.isNumber()) {
            return Optional.of(value.asDouble());
        }
        return switch (value.asString()) {
            case "nan" -> Optional.of(Double.NaN);
            case "inf" -> Optional.of(Double.POSITIVE_INFINITY);
            case "-inf" -> Optional.of(Double.NEGATIVE_INFINITY);
            default -> Optional.empty();
        };
    }
}
