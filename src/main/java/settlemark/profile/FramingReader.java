package settlemark.profile;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** How the stream is cut into frames. */
final class FramingReader {
    private FramingReader() {}

    static Optional<Framing> read(Section framing) {
        Optional<Framing> line = framing.child("line").flatMap(FramingReader::line);
        Optional<Framing> fixed = framing.child("fixed").flatMap(FramingReader::fixed);
        return line.or(() -> fixed).or(() -> framing.child("length-field").flatMap(FramingReader::lengthField));
    }

    private static Optional<Framing> line(Section line) {
        ByteText end = ByteText.of(line.text("end", "").getBytes(StandardCharsets.UTF_8));
        int maximumBytes = line.integer("maximum-bytes", 0);
        if (end.length() >= maximumBytes) {
            line.error("maximum-bytes", "maximum-bytes must be more than the bytes of the end, got " + maximumBytes);
            return Optional.empty();
        }
        return Optional.of(new Framing.Line(end, maximumBytes));
    }

    private static Optional<Framing> fixed(Section fixed) {
        Optional<ByteText> start = fixed.has("start") ? Words.hex(fixed, "start") : Optional.of(ByteText.EMPTY);
        int length = fixed.integer("length-bytes", 0);
        if (start.isEmpty()) {
            return Optional.empty();
        }
        if (start.get().length() >= length) {
            fixed.error("length-bytes", "length-bytes must be more than the bytes of the start, got " + length);
            return Optional.empty();
        }
        return Optional.of(new Framing.Fixed(start.get(), length));
    }

    private static Optional<Framing> lengthField(Section field) {
        Optional<ByteText> start = Words.hex(field, "start");
        if (start.isEmpty()) {
            return Optional.empty();
        }
        int at = field.integer("at", 0);
        Wire wire = Words.wire(field.text("type", "uint8"), Words.order(field));
        int maximumBytes = field.integer("maximum-bytes", 0);
        if (at < start.get().length()) {
            field.error("at", "at must lie after the start of " + start.get().length() + " bytes, got " + at);
            return Optional.empty();
        }
        if (at + wire.bytes() >= maximumBytes) {
            field.error(
                    "maximum-bytes",
                    "maximum-bytes must be more than the " + (at + wire.bytes())
                            + " bytes up to the end of the length, got " + maximumBytes);
            return Optional.empty();
        }
        return Optional.of(new Framing.LengthField(start.get(), at, wire, field.integer("adds", 0), maximumBytes));
    }
}
