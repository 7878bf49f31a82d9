package settlemark.profile;

import java.util.Optional;

/** How the stream is cut into frames. */
final class FramingReader {
    /** Longest value of a characteristic (Bluetooth Core 5.4, 3.F.3.2.9). */
    private static final int LONGEST_VALUE_BYTES = 512;
    /** Longest data of one advertising structure, whose length is written in one byte. */
    private static final int LONGEST_ADVERTISED_BYTES = 255;

    private FramingReader() {}

    /** Empty where it could not be read; a problem says why. */
    static Optional<Framing> read(Section framing) {
        String kind = framing.keys().get(0);
        Section section = framing.child(kind).orElseThrow();
        int maximumBytes = section.integer("maximum-bytes", 0);
        return switch (kind) {
            case "line" -> line(section, maximumBytes);
            case "fixed" -> fixed(section);
            case "length-field" -> lengthField(section, maximumBytes);
            case "marks" -> new MarksReader(section, maximumBytes).read();
            case "slip" -> Optional.of(Framing.Marked.slip(maximumBytes));
            case "cobs" -> Optional.of(new Framing.Cobs(maximumBytes));
            case "idle-gap" ->
                Optional.of(new Framing.IdleGap(Math.round(section.number("milliseconds", 1) * 1e6), maximumBytes));
            default -> Optional.of(new Framing.Packet(maximumBytes));
        };
    }

    /** What a source's framing is where the document does not say. */
    static Optional<Framing> usual(Source source) {
        if (source instanceof Source.Characteristic) {
            return Optional.of(new Framing.Packet(LONGEST_VALUE_BYTES));
        }
        boolean advertised = source instanceof Source.ServiceData || source instanceof Source.CompanyData;
        return advertised ? Optional.of(new Framing.Packet(LONGEST_ADVERTISED_BYTES)) : Optional.empty();
    }

    private static Optional<Framing> line(Section line, int maximumBytes) {
        ByteText end = Words.utf8(line, "end");
        if (end.length() >= maximumBytes) {
            line.error("maximum-bytes", "maximum-bytes must be more than the bytes of the end, got " + maximumBytes);
            return Optional.empty();
        }
        return Optional.of(new Framing.Line(end, maximumBytes));
    }

    private static Optional<Framing> fixed(Section fixed) {
        Optional<ByteText> start = start(fixed);
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

    private static Optional<Framing> lengthField(Section field, int maximumBytes) {
        Optional<ByteText> start = start(field);
        if (start.isEmpty()) {
            return Optional.empty();
        }
        int at = field.integer("at", 0);
        Wire wire = Words.unsigned(field, "type");
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

    private static Optional<ByteText> start(Section section) {
        return section.has("start") ? Words.hex(section, "start") : Optional.of(ByteText.EMPTY);
    }
}
