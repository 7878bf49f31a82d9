package settlemark.profile;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.SampleStatus;
import tools.jackson.databind.JsonNode;

/** Special values of a field: raw numbers or texts that are no measurement. */
final class SpecialReader {
    private SpecialReader() {}

    /** Texts by their meaning, empty where one of them is wrong. */
    static Optional<Map<SampleStatus, List<String>>> texts(Section field) {
        Map<SampleStatus, List<String>> specials = new EnumMap<>(SampleStatus.class);
        for (String word : specialKeys(field)) {
            List<String> texts = new ArrayList<>();
            each(field, word).forEach(value -> texts.add(value.asString().strip()));
            if (texts.contains("")) {
                complain(field, word, word + " must not be blank");
                return Optional.empty();
            }
            specials.put(Words.status(word), List.copyOf(texts));
        }
        return Optional.of(specials);
    }

    /** Raw numbers by their meaning, empty where one of them does not fit the wire. */
    static Optional<Map<SampleStatus, List<Long>>> raws(Section field, Wire wire) {
        Map<SampleStatus, List<Long>> specials = new EnumMap<>(SampleStatus.class);
        boolean good = true;
        for (String word : specialKeys(field)) {
            List<Long> raws = new ArrayList<>();
            for (JsonNode value : each(field, word)) {
                Optional<Long> raw = raw(value, wire);
                raw.ifPresentOrElse(
                        raws::add, () -> complain(field, word, word + " must be " + expected(wire) + ", got " + value));
                good &= raw.isPresent();
            }
            specials.put(Words.status(word), List.copyOf(raws));
        }
        return good ? Optional.of(specials) : Optional.empty();
    }

    private static void complain(Section field, String word, String message) {
        field.child("special").ifPresent(special -> special.error(word, message));
    }

    private static String expected(Wire wire) {
        return wire.kind() == Wire.Kind.IEEE_FLOAT
                ? "a number, \"nan\", \"inf\" or \"-inf\""
                : "a whole number of " + 8 * wire.bytes() + " bits";
    }

    private static Optional<Long> raw(JsonNode value, Wire wire) {
        if (wire.kind() == Wire.Kind.IEEE_FLOAT) {
            return ieee(value)
                    .map(d -> wire.bytes() == 4 ? (double) d.floatValue() : d)
                    .map(Double::doubleToLongBits);
        }
        if (!value.isIntegralNumber()) {
            return Optional.empty();
        }
        BigInteger raw = value.bigIntegerValue();
        int bits = 8 * wire.bytes();
        boolean fits = raw.signum() >= 0 ? raw.bitLength() <= bits : signedFits(raw, wire, bits);
        if (!fits) {
            return Optional.empty();
        }
        long low = raw.longValue();
        int unused = 64 - bits;
        return Optional.of(wire.kind() == Wire.Kind.SIGNED ? low << unused >> unused : low << unused >>> unused);
    }

    private static boolean signedFits(BigInteger raw, Wire wire, int bits) {
        return wire.kind() == Wire.Kind.SIGNED && raw.bitLength() < bits;
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

    private static List<String> specialKeys(Section field) {
        return field.child("special").map(Section::keys).orElse(List.of());
    }

    private static List<JsonNode> each(Section field, String word) {
        JsonNode value = field.node("special").path(word);
        List<JsonNode> values = new ArrayList<>();
        if (value.isArray()) {
            value.forEach(values::add);
        } else {
            values.add(value);
        }
        return values;
    }
}
