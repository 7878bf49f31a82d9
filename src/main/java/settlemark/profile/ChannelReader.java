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
    private final FieldIndex fields;

    ChannelReader(FieldIndex fields) {
        this.fields = fields;
    }

    /** All channels that could be read, in the document's order. */
    List<ChannelSource> readAll(Section root) {
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
            List<FieldRef> refs = refs(section);
            Optional<Accuracy> accuracy = accuracy(section);
            if (unit.isPresent() && !refs.isEmpty() && accuracy.isPresent()) {
                Channel channel = channel(section, id, unit.get(), accuracy.get(), poll(refs.get(0)));
                sources.add(new ChannelSource(channel, refs, section.integer("sign", 1), section.line()));
            }
        }
        return sources;
    }

    /** The channel's fields, none where one of them is wrong. */
    private List<FieldRef> refs(Section section) {
        List<FieldRef> refs = new ArrayList<>();
        List<String> names = section.texts("field");
        for (String name : names) {
            fields.find(section, "field", name)
                    .filter(ref -> isNumber(section, name, ref))
                    .ifPresent(refs::add);
        }
        if (refs.size() < names.size()) {
            return List.of();
        }
        if (refs.stream().map(FieldRef::message).distinct().count() > 1) {
            section.error(
                    "field", "the fields of a channel must stand in one message, got " + String.join(", ", names));
            return List.of();
        }
        return refs;
    }

    private boolean isNumber(Section section, String name, FieldRef ref) {
        Field.Content content = fields.field(ref).content();
        if (content instanceof Field.Binary || content instanceof Field.Decimal) {
            return true;
        }
        section.error(
                "field",
                content instanceof Field.Literal
                        ? "field \"" + name + "\" is a literal, a channel needs a number"
                        : "field \"" + name + "\" holds words, a channel needs a number; use it under facts");
        return false;
    }

    /** Seconds between two requests, NaN where the device is not asked again and again. */
    private double poll(FieldRef ref) {
        return fields.message(ref).source().map(Sources::periodSeconds).orElse(Double.NaN);
    }

    private static Channel channel(Section section, String id, Unit unit, Accuracy accuracy, double pollSeconds) {
        return new Channel(
                id,
                section.text("label", id),
                unit.dimension(),
                unit,
                section.number("resolution", Double.NaN),
                accuracy,
                section.number("period", pollSeconds),
                section.number("zero-limit", Double.NaN),
                section.number("warm-up", 0));
    }

    private static Optional<Accuracy> accuracy(Section channel) {
        Optional<Section> accuracy = channel.child("accuracy");
        if (accuracy.isEmpty()) {
            return Optional.of(Accuracy.UNKNOWN);
        }
        Section section = accuracy.get();
        double digits = section.number("digits", 0);
        if (section.has("digits") && !channel.has("resolution")) {
            section.error("digits", "digits needs resolution in its channel: how much one digit is");
            return Optional.empty();
        }
        return Optional.of(new Accuracy(
                section.number("reading-percent", 0) / 100,
                section.number("range-percent", 0) / 100,
                section.number("constant", 0) + digits * channel.number("resolution", 0),
                section.number("range", 0)));
    }
}
