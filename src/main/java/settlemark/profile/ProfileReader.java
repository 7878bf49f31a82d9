package settlemark.profile;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.document.Document;
import settlemark.document.DocumentLimits;
import settlemark.document.DocumentSchema;
import settlemark.document.Problem;

/**
 * Reads a profile from its YAML or JSON text; finds all problems at once, each with its line, column and remedy. The
 * schema is checked first, then what a schema cannot say: that the parts fit each other.
 */
public final class ProfileReader {
    private ProfileReader() {}

    /**
     * Reads a profile.
     *
     * @param fileName for messages
     * @param text the document's bytes, UTF-8, at most 1 MiB
     */
    public static ProfileReading read(String fileName, byte[] text) {
        List<Problem> problems = new ArrayList<>();
        Optional<Document> document = Document.read(fileName, text, DocumentLimits.DEFAULT, problems);
        Optional<Profile> profile = document.flatMap(d -> read(d, text, problems));
        problems.sort(null);
        boolean good = problems.stream().noneMatch(Problem::isError);
        return new ProfileReading(good ? profile : Optional.empty(), problems);
    }

    private static Optional<Profile> read(Document document, byte[] text, List<Problem> problems) {
        Set<String> wrong = SchemaHolder.SCHEMA.check(document, problems);
        Section root = Section.root(document, problems, wrong);
        if (!document.root().isObject()) {
            return Optional.empty();
        }
        Optional<SerialLine> serial = root.child("link")
                .filter(Section::isClean)
                .flatMap(link -> link.child("serial"))
                .map(SerialLineReader::read);
        Optional<Framing> framing =
                root.child("framing").filter(Section::isClean).flatMap(FramingReader::read);
        Optional<Framing.Columns> columns =
                root.child("columns").filter(Section::isClean).map(ProfileReader::columns);
        Optional<Checksum> checksum =
                root.child("checksum").filter(Section::isClean).flatMap(ChecksumReader::read);
        List<Field> fields = FieldReader.readAll(root);
        List<ChannelSource> sources = ChannelReader.readAll(root, fields);
        List<Example> examples = ExampleReader.readAll(root);
        framing.ifPresent(f -> new LayoutCheck(root, f, checksum).run(fields, columns));
        warn(root);
        if (framing.isEmpty() || problems.stream().anyMatch(Problem::isError)) {
            return Optional.empty();
        }
        return Optional.of(new Profile(
                root.text("id", ""),
                root.text("name", ""),
                root.text("description", "").strip(),
                root.flag("simulated"),
                digest(text),
                new String(text, StandardCharsets.UTF_8),
                List.of(),
                serial.map(Link.Serial::new),
                List.of(),
                List.of(),
                List.of(new Message(
                        "frame",
                        new Source.Unasked(),
                        framing.get(),
                        columns,
                        Optional.empty(),
                        checksum,
                        Optional.empty(),
                        fields,
                        1)),
                sources,
                List.of(),
                examples));
    }

    private static Framing.Columns columns(Section columns) {
        return new Framing.Columns(columns.text("separator", " ").charAt(0), columns.integer("count", 0));
    }

    private static void warn(Section root) {
        if (root.items("examples").isEmpty()) {
            root.warning("no examples: nothing proves this profile; add a captured frame under \"examples\" with the"
                    + " values that it must give");
        } else if (root.items("examples").stream().allMatch(e -> e.has("rejected"))) {
            root.warning("examples", "no good example: add a captured frame with the values that it must give");
        }
    }

    private static String digest(byte[] text) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Compiled when the first profile is read. */
    private static final class SchemaHolder {
        static final DocumentSchema SCHEMA = DocumentSchema.of(ProfileLibrary.resource("profile.schema.json"));
    }
}
