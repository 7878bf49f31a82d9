package settlemark.profile;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One kind of message of a device: where it comes from, how it is cut into frames and what stands in a frame.
 *
 * @param id key within the profile
 * @param source where its bytes come from
 * @param framing how its bytes are cut into frames
 * @param columns how lines are cut into columns, empty where no field needs them
 * @param tagged how a frame is cut into tagged values, empty where no field needs it
 * @param checksum at the frame's end, empty where there is none
 * @param cipher how frames are protected, empty where they are plain
 * @param fields in the document's order
 * @param line where the profile describes it
 */
public record Message(
        String id,
        Source source,
        Framing framing,
        Optional<Framing.Columns> columns,
        Optional<Tagged> tagged,
        Optional<Checksum> checksum,
        Optional<Cipher> cipher,
        List<Field> fields,
        int line) {
    public Message {
        Objects.requireNonNull(id);
        Objects.requireNonNull(source);
        Objects.requireNonNull(framing);
        fields = List.copyOf(fields);
    }
}
