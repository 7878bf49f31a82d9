package settlemark.profile;

import java.util.List;
import java.util.Optional;

/**
 * A message of which some parts may be wrong.
 *
 * @param section where the document describes it
 * @param id key within the profile
 * @param title what messages call it
 * @param source empty where it could not be read; so with all that follow
 * @param framing empty where it is wrong or missing
 * @param columns empty too where there are none
 * @param tagged empty too where there is none
 * @param checksum empty too where there is none
 * @param cipher empty too where there is none
 * @param fields those that could be read
 */
record MessageDraft(
        Section section,
        String id,
        String title,
        Optional<Source> source,
        Optional<Framing> framing,
        Optional<Framing.Columns> columns,
        Optional<Tagged> tagged,
        Optional<Checksum> checksum,
        Optional<Cipher> cipher,
        List<Field> fields) {

    /** Names of all fields that the document gives it, readable or not. */
    List<String> names() {
        return section.items("fields").stream()
                .map(field -> field.text("name", ""))
                .toList();
    }

    /** The message, empty where a part without which there is none could not be read. */
    Optional<Message> finished() {
        if (source.isEmpty() || framing.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Message(
                id, source.get(), framing.get(), columns, tagged, checksum, cipher, fields, section.line()));
    }
}
