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
        if (!document.root().isObject()) {
            return Optional.empty();
        }
        Section root = Section.root(document, problems, wrong);
        Connection connection = Connection.read(root);
        List<Recognition> recognitions = RecognitionReader.readAll(root, connection);
        StepReader steps = new StepReader(connection);
        List<Step> startUp = steps.readAll(root, "start-up");
        List<Action> actions = ActionReader.readAll(root, steps);
        List<MessageDraft> drafts = new MessageReader(root, connection).readAll();
        FieldIndex fields = new FieldIndex(drafts);
        List<ChannelSource> sources = new ChannelReader(fields).readAll(root);
        List<FactSource> facts = FactReader.readAll(root, fields);
        List<Example> examples = new ExampleReader(drafts, new ExpectationReader(root, sources, facts)).readAll(root);
        MessagesCheck.run(drafts);
        if (root.items("channels").isEmpty() && root.items("facts").isEmpty()) {
            root.error("the profile needs \"channels\" or \"facts\": what it is for");
        }
        warn(root);
        List<Message> messages =
                drafts.stream().flatMap(draft -> draft.finished().stream()).toList();
        if (problems.stream().anyMatch(Problem::isError)) {
            return Optional.empty();
        }
        return Optional.of(new Profile(
                root.text("id", ""),
                root.text("name", ""),
                root.text("description", "").strip(),
                root.flag("simulated"),
                digest(text),
                new String(text, StandardCharsets.UTF_8),
                recognitions,
                connection.link(),
                startUp,
                actions,
                messages,
                sources,
                facts,
                examples));
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
