package settlemark.profile;

import java.util.List;
import java.util.Optional;

/** The numbers among the fields, with their scale. */
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
        Optional<Integer> decimals =
                section.has("decimals") ? Optional.of(section.integer("decimals", 0)) : Optional.empty();
        return SpecialReader.texts(section)
                .map(specials -> new Field.Decimal(
                        new Curve.Linear(section.number("scale", 1), section.number("offset", 0)),
                        decimals,
                        section.flag("plus"),
                        specials));
    }

    private static Optional<Field.Content> binary(Section section) {
        Wire wire = Words.wire(section.text("type", ""), Words.order(section));
        boolean counts = section.flag("counts");
        if (counts && wire.kind() != Wire.Kind.UNSIGNED) {
            section.error("counts", "counts needs an unsigned type such as uint8");
            return Optional.empty();
        }
        return SpecialReader.raws(section, wire)
                .map(specials -> new Field.Binary(
                        wire,
                        Optional.empty(),
                        -1L,
                        new Curve.Linear(section.number("scale", 1), section.number("offset", 0)),
                        specials,
                        counts));
    }
}
