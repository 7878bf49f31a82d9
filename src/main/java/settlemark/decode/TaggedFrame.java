package settlemark.decode;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import settlemark.profile.Field;
import settlemark.profile.Wire;

/** The tagged values of a frame, to be changed and written again. */
final class TaggedFrame {
    private record Entry(long tag, byte[] value) {}

    private final TagWalk walk;
    private final byte[] head;
    private final byte[] rest;
    private final List<Entry> entries = new ArrayList<>();

    TaggedFrame(TagWalk walk, byte[] frame, int end) {
        this.walk = walk;
        this.head = Arrays.copyOf(frame, walk.tagged.at());
        int[] last = {Math.min(end, walk.tagged.at())};
        walk.cut(frame, 0, end, (tag, from, to) -> {
            entries.add(new Entry(tag, Arrays.copyOfRange(frame, from, to)));
            last[0] = to;
        });
        this.rest = Arrays.copyOfRange(frame, last[0], end);
    }

    boolean holds(Field.ByTag place) {
        return index(place) >= 0;
    }

    /** Adds values with the tag until there is the wanted one, each behind those with lower tags, as most formats ask. */
    void add(Field.ByTag place, int leastBytes) {
        while (!holds(place)) {
            int at = 0;
            for (int i = 0; i < entries.size(); i++) {
                at = entries.get(i).tag() <= place.tag() ? i + 1 : at;
            }
            int known = walk.knownLength(place.tag());
            entries.add(at, new Entry(place.tag(), new byte[known >= 0 ? known : leastBytes]));
        }
    }

    void remove(Field.ByTag place) {
        int index = index(place);
        if (index >= 0) {
            entries.remove(index);
        }
    }

    /** Puts characters in a value, up to its end, or a number of bytes of it. */
    void put(Field.ByTag place, byte[] words, int size) {
        int index = index(place);
        byte[] value = entries.get(index).value();
        int known = walk.knownLength(place.tag());
        int length = size > 0 ? Math.max(value.length, place.offset() + size) : place.offset() + words.length;
        byte[] changed = Arrays.copyOf(value, known >= 0 ? known : length);
        if (place.offset() + words.length > changed.length || size > 0 && words.length > size) {
            throw new IllegalArgumentException("the value has no room for " + words.length + " bytes of characters");
        }
        Arrays.fill(changed, place.offset(), size > 0 ? place.offset() + size : changed.length, (byte) 0);
        System.arraycopy(words, 0, changed, place.offset(), words.length);
        entries.set(index, new Entry(place.tag(), changed));
    }

    /** The frame up to its checksum. */
    byte[] bytes() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(head);
        for (Entry entry : entries) {
            number(entry.tag(), walk.tagged.tag(), out);
            int lengthBytes = walk.lengthBytes(entry.tag());
            if (lengthBytes > 0) {
                Wire wire = walk.tagged
                        .length()
                        .filter(w -> walk.knownLength(entry.tag()) == -1 && w.bytes() == lengthBytes)
                        .orElse(new Wire(Wire.Kind.UNSIGNED, lengthBytes, Wire.Order.LITTLE));
                number(entry.value().length, wire, out);
            }
            out.writeBytes(entry.value());
        }
        out.writeBytes(rest);
        return out.toByteArray();
    }

    private static void number(long number, Wire wire, ByteArrayOutputStream out) {
        byte[] bytes = new byte[wire.bytes()];
        RawBits.writeBits(number, bytes, 0, wire);
        out.writeBytes(bytes);
    }

    private int index(Field.ByTag place) {
        int left = place.nth();
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).tag() == place.tag() && left-- == 0) {
                return i;
            }
        }
        return -1;
    }
}
