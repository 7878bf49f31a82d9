package settlemark.profile;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.SampleStatus;

/** What stands at a field's place other than a literal: numbers in bytes, numbers in text, and words. */
final class NumberReader {
    private static final List<String> EVERYWHERE =
            List.of("name", "at", "column", "pattern", "register", "tag", "nth", "when", "type");
    private static final List<String> NUMBERS = List.of("scale", "offset", "polynomial", "table", "special");
    private static final List<String> ORDERS = List.of("byte-order", "word-order");
    private static final List<String> INTEGERS = List.of("bit", "mask", "counts");

    private final Section section;
    private final Field.Place place;
    private final boolean modbus;
    private final NumberType type;

    NumberReader(Section section, Field.Place place, boolean modbus) {
        this.section = section;
        this.place = place;
        this.modbus = modbus;
        this.type = NumberType.of(section.text("type", ""));
    }

    Optional<Field.Content> read() {
        boolean inText = place instanceof Field.InColumn || place instanceof Field.ByPattern;
        if (!type.isCharacters() && type.isText() != inText) {
            section.error(
                    "type",
                    type.isText()
                            ? "type text needs column or pattern rather than " + placeKey()
                            : "type must be text for a column or a pattern, got \"" + type.word() + "\"");
            return Optional.empty();
        }
        if (!keysFit()) {
            return Optional.empty();
        }
        if (type.isCharacters()) {
            return characters(inText);
        }
        return type.isText() ? decimal() : binary();
    }

    private String placeKey() {
        if (modbus) {
            return "register";
        }
        return place instanceof Field.ByTag ? "tag" : "at";
    }

    private boolean keysFit() {
        List<String> foreign = new ArrayList<>(section.keys());
        foreign.removeAll(EVERYWHERE);
        if (type.isCharacters()) {
            foreign.remove("length");
        } else {
            foreign.removeAll(NUMBERS);
            foreign.removeAll(type.isText() ? List.of("decimals", "plus") : ORDERS);
            if (type.is(Wire.Kind.SIGNED) || type.is(Wire.Kind.UNSIGNED)) {
                foreign.removeAll(INTEGERS);
            }
        }
        foreign.forEach(key -> section.error(key, key + " means nothing for type " + type.word() + "; remove it"));
        return foreign.isEmpty();
    }

    private Optional<Field.Content> characters(boolean inText) {
        if (inText && section.has("length")) {
            section.error(
                    "length", "length means nothing in a column or a pattern, which end by themselves; remove it");
            return Optional.empty();
        }
        return Optional.of(new Field.Characters(section.integer("length", 0)));
    }

    private Optional<Field.Content> decimal() {
        Optional<Integer> decimals =
                section.has("decimals") ? Optional.of(section.integer("decimals", 0)) : Optional.empty();
        Optional<Curve> curve = CurveReader.read(section);
        Optional<Map<SampleStatus, List<String>>> specials = SpecialReader.texts(section);
        if (curve.isEmpty() || specials.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Field.Decimal(curve.get(), decimals, section.flag("plus"), specials.get()));
    }

    private Optional<Field.Content> binary() {
        Optional<Wire> wire = new WireReader(section, type, modbus).read();
        Optional<Curve> curve = CurveReader.read(section);
        Optional<Map<SampleStatus, List<Long>>> specials =
                SpecialReader.raws(section, new RawRange(type.kind().orElseThrow(), type.bits()));
        Optional<Long> mask = mask();
        boolean counts = section.flag("counts");
        if (counts && !type.is(Wire.Kind.UNSIGNED)) {
            section.error("counts", "counts needs an unsigned type such as uint8");
            return Optional.empty();
        }
        if (wire.isEmpty() || curve.isEmpty() || specials.isEmpty() || mask.isEmpty()) {
            return Optional.empty();
        }
        int bit = section.integer("bit", 0);
        boolean whole = bit == 0 && type.bits() == 8 * wire.get().bytes();
        Optional<Field.Bits> bits = whole ? Optional.empty() : Optional.of(new Field.Bits(bit, type.bits()));
        return Optional.of(new Field.Binary(wire.get(), bits, mask.get(), curve.get(), specials.get(), counts));
    }

    private Optional<Long> mask() {
        if (!section.has("mask")) {
            return Optional.of(-1L);
        }
        BigInteger mask = section.bits("mask");
        if (!type.is(Wire.Kind.UNSIGNED)) {
            section.error("mask", "mask needs an unsigned type such as uint16, got type " + type.word());
            return Optional.empty();
        }
        if (mask.bitLength() > type.bits()) {
            section.error(
                    "mask",
                    "mask must fit " + type.bits() + " bits, got 0x"
                            + mask.toString(16).toUpperCase(java.util.Locale.ROOT));
            return Optional.empty();
        }
        return Optional.of(mask.longValue());
    }
}
