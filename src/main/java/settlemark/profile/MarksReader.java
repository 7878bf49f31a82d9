package settlemark.profile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Frames between marks, with or without escapes. */
final class MarksReader {
    private final Section marks;
    private final int maximumBytes;

    MarksReader(Section marks, int maximumBytes) {
        this.marks = marks;
        this.maximumBytes = maximumBytes;
    }

    Optional<Framing> read() {
        Optional<ByteText> start = marks.has("start") ? Words.hex(marks, "start") : Optional.of(ByteText.EMPTY);
        Optional<ByteText> end = Words.hex(marks, "end");
        if (start.isEmpty() || end.isEmpty()) {
            return Optional.empty();
        }
        if (start.get().length() + end.get().length() >= maximumBytes) {
            marks.error("maximum-bytes", "maximum-bytes must be more than the bytes of the marks, got " + maximumBytes);
            return Optional.empty();
        }
        List<Byte> marked = new ArrayList<>(bytes(start.get()));
        marked.addAll(bytes(end.get()));
        Optional<Framing.Escaping> escaping =
                marks.has("escape") ? escaping(marks.child("escape").orElseThrow(), marked) : plain();
        return escaping.map(e -> new Framing.Marked(start.get(), end.get(), e, maximumBytes));
    }

    private static Optional<Framing.Escaping> plain() {
        return Optional.of(new Framing.Plain());
    }

    private Optional<Framing.Escaping> escaping(Section escape, List<Byte> marked) {
        byte escapeByte = one(escape.text("byte", ""));
        if (marked.contains(escapeByte)) {
            escape.error("byte", "the escape byte must differ from the marks, got " + shown(escapeByte));
            return Optional.empty();
        }
        if (escape.has("xor") == escape.has("codes")) {
            String got = escape.has("xor") ? "both" : "none";
            escape.error("escape must have exactly one of xor, codes, got " + got);
            return Optional.empty();
        }
        List<Byte> reserved = new ArrayList<>(marked);
        reserved.add(escapeByte);
        return escape.has("xor") ? flipped(escape, escapeByte, reserved) : stuffed(escape, escapeByte, reserved);
    }

    private static Optional<Framing.Escaping> flipped(Section escape, byte escapeByte, List<Byte> reserved) {
        byte xor = one(escape.text("xor", ""));
        if (xor == 0) {
            escape.error("xor", "xor must not be 00: it would change nothing");
            return Optional.empty();
        }
        for (byte mark : reserved) {
            byte flipped = (byte) (mark ^ xor);
            if (reserved.contains(flipped)) {
                escape.error(
                        "xor",
                        "xor must make other bytes of the marks: " + shown(mark) + " would travel as " + shown(flipped)
                                + ", which is a mark or the escape itself");
                return Optional.empty();
            }
        }
        return Optional.of(new Framing.Flipped(escapeByte, xor));
    }

    private static Optional<Framing.Escaping> stuffed(Section escape, byte escapeByte, List<Byte> reserved) {
        Section section = escape.child("codes").orElseThrow();
        Map<Byte, Byte> codes = new LinkedHashMap<>();
        for (String key : section.keys()) {
            Optional<Byte> code = code(section, key, reserved);
            if (code.isEmpty()) {
                return Optional.empty();
            }
            byte meaning = one(section.text(key, ""));
            if (codes.containsValue(meaning)) {
                section.error(key, "two codes stand for " + shown(meaning) + "; keep one");
                return Optional.empty();
            }
            if (codes.put(code.get(), meaning) != null) {
                section.errorAtKey(key, "code " + shown(code.get()) + " stands twice; keep one");
                return Optional.empty();
            }
        }
        if (!codes.containsValue(escapeByte)) {
            escape.error(
                    "codes",
                    "codes must have one for the escape byte " + shown(escapeByte)
                            + " itself: without it that byte could not travel");
            return Optional.empty();
        }
        return Optional.of(new Framing.Stuffed(escapeByte, List.copyOf(codes.keySet()), List.copyOf(codes.values())));
    }

    private static Optional<Byte> code(Section codes, String key, List<Byte> reserved) {
        if (!key.matches("[0-9A-Fa-f]{2}")) {
            codes.errorAtKey(
                    key,
                    "a code must be one byte as two hexadecimal digits, such as \"DC\", got \"" + Words.shown(key)
                            + "\"");
            return Optional.empty();
        }
        byte code = one(key);
        // The escape byte itself may be a code: twice it then stands for something.
        if (reserved.subList(0, reserved.size() - 1).contains(code)) {
            codes.errorAtKey(key, "code " + key + " must differ from the marks");
            return Optional.empty();
        }
        return Optional.of(code);
    }

    /** The schema has seen to it that it is two digits. */
    private static byte one(String digits) {
        return (byte) Integer.parseInt(digits, 16);
    }

    private static String shown(byte b) {
        return ByteText.of(new byte[] {b}).toString();
    }

    private static List<Byte> bytes(ByteText text) {
        List<Byte> bytes = new ArrayList<>();
        for (byte b : text.toBytes()) {
            bytes.add(b);
        }
        return bytes;
    }
}
