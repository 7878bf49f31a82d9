package settlemark.profile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.measure.Accuracy;
import settlemark.measure.Channel;
import settlemark.measure.Unit;

/** The channels: what is measured, in which unit, how well. */
final class ChannelReader {
    private ChannelReader() {}

    /** All channels that could be read, in the document's order. */
    static List<ChannelSource> readAll(Section root, List<Field> fields) {
        List<String> names = root.items("fields").stream()
                .map(field -> field.text("name", ""))
                .toList();
        List<ChannelSource> sources = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (Section section : root.items("channels")) {
            if (!section.isClean()) {
                continue;
            }
            String id = section.text("id", "");
            if (!ids.add(id)) {
                section.error("id", "channel \"" + id + "\" stands twice; give each its own id");
            }
            Optional<Unit> unit = UnitReader.read(section);
            int field = field(section, names, fields);
            if (unit.isPresent() && field >= 0) {
                int sign = section.integer("sign", 1);
                sources.add(new ChannelSource(
                        channel(section, id, unit.get()), List.of(new FieldRef(0, field)), sign, section.line()));
            }
        }
        return sources;
    }

    /** Index of the channel's field among those that could be read, -1 where it is not there. */
    private static int field(Section section, List<String> names, List<Field> fields) {
        String name = section.text("field", "");
        if (!names.contains(name)) {
            section.error("field", "no field is called \"" + name + "\"; there are " + String.join(", ", names));
            return -1;
        }
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).name().equals(name)) {
                if (fields.get(i).content() instanceof Field.Literal) {
                    section.error("field", "field \"" + name + "\" is a literal, a channel needs a number");
                    return -1;
                }
                return i;
            }
        }
        return -1;
    }

    private static Channel channel(Section section, String id, Unit unit) {
        return new Channel(
                id,
                section.text("label", id),
                unit.dimension(),
                unit,
                section.number("resolution", Double.NaN),
                section.child("accuracy").map(ChannelReader::accuracy).orElse(Accuracy.UNKNOWN),
                section.number("period", Double.NaN),
                section.number("zero-limit", Double.NaN),
                section.number("warm-up", 0));
    }

    private static Accuracy accuracy(Section accuracy) {
        return new Accuracy(
                accuracy.number("reading-percent", 0) / 100,
                accuracy.number("range-percent", 0) / 100,
                accuracy.number("constant", 0),
                accuracy.number("range", 0));
    }
}
