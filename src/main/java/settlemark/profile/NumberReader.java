package settlemark.profile;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.SampleStatus;
import tools.jackson.databind.JsonNode;

/** The numbers among the fields, with their scale and their special values. */
final class NumberReader {
    private NumberReader() {}

    static Optional<Field.Content> read(Section section, Field.Place place) {
        boolean text = section.text("type", "").equals("text");
        if (text == place instanceof Field.AtByte) {
            section.error(
                    "type",
                    text
                            ? "type text needs column or pattern rather than at"
                            : "type must be text for a column or a pattern, got \"" + section.text("type", "") + "\"");
            return Optional.empty();
        }
        if (section.number("scale", 1) == 0) {
            section.error("scale", "scale must not be 0: every value would be the offset");
            return Optional.empty();
        }
        List<String> foreign = text ? List.of("byte-order", "counts") : List.of("decimals", "plus");
        for (String key : foreign) {
            if (section.has(key)) {
                section.error(key, key + " means nothing for type " + section.text("type", "") + "; remove it");
                return Optional.empty();
            }
        }
        return text ? decimal(section) : binary(section);
    }

    private static Optional<Field.Content> decimal(Section section) {
        Map<SampleStatus, List<String>> specials = new EnumMap<>(SampleStatus.class);
        for (String word : specialKeys(section)) {
            List<String> texts = new ArrayList<>();
            each(section, word).forEach(value -> texts.add(value.asString().strip()));
            if (texts.contains("")) {
                section.error("special", word + " must not be blank");
                return Optional.empty();
            }
            specials.put(Words.status(word), List.copyOf(texts));
        }
        Optional<Integer> decimals =
                section.has("decimals") ? Optional.of(section.integer("decimals", 0)) : Optional.empty();
        return Optional.of(new Field.Decimal(
                section.number("scale", 1), section.number("offset", 0), decimals, section.flag("plus"), specials));
    }

    private static Optional<Field.Content> binary(Section section) {
        Wire wire = Words.wire(section.text("type", ""), Words.order(section));
        Map<SampleStatus, List<Long>> specials = new EnumMap<>(SampleStatus.class);
        boolean good = true;
        for (String word : specialKeys(section)) {
            List<Long> raws = new ArrayList<>();
            for (JsonNode value : each(section, word)) {
                Optional<Long> raw = raw(value, wire);
                if (raw.isEmpty()) {
                    section.child("special")
                            .ifPresent(s -> s.error(word, word + " must be " + expected(wire) + ", got " + value));
                }
                good &= raw.isPresent();
                raw.ifPresent(raws::add);
            }
            specials.put(Words.status(word), List.copyOf(raws));
        }
        if (section.flag("counts") && wire.kind() != Wire.Kind.UNSIGNED) {
            section.error("counts", "counts needs an unsigned type such as uint8");
            good = false;
        }
        return good
                ? Optional.of(new Field.Binary(
                        wire,
                        section.number("scale", 1),
                        section.number("offset", 0),
                        specials,
                        section.flag("counts")))
                : Optional.empty();
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

    private static List<String> specialKeys(Section section) {
        return section.child("special").map(Section::keys).orElse(List.of());
    }

    private static List<JsonNode> each(Section section, String word) {
        JsonNode value = section.node("special").path(word);
        List<JsonNode> values = new ArrayList<>();
        if (value.isArray()) {
            value.forEach(values::add);
        } else {
            values.add(value);
        }
        return values;
    }
}
