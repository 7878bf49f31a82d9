package settlemark.profile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The messages: one in the short shape of a profile, a list of them in the long one. */
final class MessageReader {
    /** What a message of the short shape is called. */
    static final String ONLY = "frame";

    private static final List<String> OF_A_MESSAGE = List.of(
            "ask",
            "characteristic",
            "service-data",
            "company-data",
            "framing",
            "columns",
            "tagged",
            "checksum",
            "cipher",
            "fields");
    private static final List<String> FOLLOWS_FROM_REGISTERS =
            List.of("framing", "columns", "tagged", "checksum", "cipher");

    private final Section root;
    private final Connection connection;
    private final Set<String> fieldNames = new HashSet<>();

    MessageReader(Section root, Connection connection) {
        this.root = root;
        this.connection = connection;
    }

    List<MessageDraft> readAll() {
        List<MessageDraft> drafts = new ArrayList<>();
        if (!root.has("messages")) {
            drafts.add(read(root, ONLY, "the profile"));
            return drafts;
        }
        for (String key : root.present(OF_A_MESSAGE)) {
            root.errorAtKey(key, key + " stands in each message where there are messages; move it there");
        }
        Set<String> ids = new HashSet<>();
        for (Section section : root.items("messages")) {
            if (!section.isMapping()) {
                continue;
            }
            String id = section.text("id", "");
            if (!ids.add(id)) {
                section.error("id", "message \"" + id + "\" stands twice; give each its own id");
            }
            drafts.add(read(section, id, "message \"" + Words.shown(id) + "\""));
        }
        return drafts;
    }

    private MessageDraft read(Section section, String id, String title) {
        Optional<Source> source = new SourceReader(section, title, connection).read();
        if (!section.has("fields")) {
            section.error(title + " needs \"fields\"" + (section == root ? " or \"messages\"" : ""));
        }
        Optional<Section> ask = section.child("ask");
        if (ask.isPresent() && ask.get().has("function")) {
            return modbus(section, id, title, source);
        }
        FrameScope scope = new FrameScope(Optional.empty(), false, 0);
        return new MessageDraft(
                section,
                id,
                title,
                source,
                framing(section, title, source),
                clean(section, "columns").map(MessageReader::columns),
                clean(section, "tagged").flatMap(TaggedReader::read),
                clean(section, "checksum").flatMap(ChecksumReader::read),
                cipher(section, title, source),
                new FieldReader(section, scope, fieldNames).readAll());
    }

    private MessageDraft modbus(Section section, String id, String title, Optional<Source> source) {
        Optional<Source.Registers> registers = source.map(s -> (Source.Registers) s);
        if (registers.isPresent()) {
            for (String key : section.present(FOLLOWS_FROM_REGISTERS)) {
                section.errorAtKey(key, key + " follows from ask: {function: ...} in Modbus; remove it");
            }
        }
        FrameScope scope = new FrameScope(registers, registers.isEmpty(), connection.addressBase());
        List<Field> fields = new ArrayList<>(new FieldReader(section, scope, fieldNames).readAll());
        int line = section.child("ask").orElseThrow().line();
        registers.ifPresent(r -> fields.addAll(ModbusFrame.header(r, line)));
        return new MessageDraft(
                section,
                id,
                title,
                source,
                registers.map(ModbusFrame::framing),
                Optional.empty(),
                Optional.empty(),
                registers.map(r -> ModbusFrame.checksum(line)),
                Optional.empty(),
                fields);
    }

    private static Optional<Framing> framing(Section section, String title, Optional<Source> source) {
        if (section.has("framing")) {
            return clean(section, "framing").flatMap(FramingReader::read);
        }
        Optional<Framing> usual = source.flatMap(FramingReader::usual);
        if (usual.isEmpty() && source.isPresent()) {
            section.error(title + " needs \"framing\": how its bytes are cut into frames");
        }
        return usual;
    }

    private static Optional<Cipher> cipher(Section section, String title, Optional<Source> source) {
        Optional<Section> cipher = clean(section, "cipher");
        if (cipher.isPresent()
                && source.filter(s -> !(s instanceof Source.ServiceData)).isPresent()) {
            section.error(
                    "cipher", "cipher bthome-v2 needs service-data, whose UUID is part of it; " + title + " has none");
            return Optional.empty();
        }
        return cipher.map(c -> Cipher.BTHOME_V2);
    }

    private static Optional<Section> clean(Section section, String key) {
        return section.child(key).filter(Section::isClean);
    }

    private static Framing.Columns columns(Section columns) {
        return new Framing.Columns(columns.text("separator", " ").charAt(0), columns.integer("count", 0));
    }
}
