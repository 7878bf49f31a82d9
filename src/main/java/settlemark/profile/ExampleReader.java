package settlemark.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The frames that prove a profile. */
final class ExampleReader {
    private final List<MessageDraft> messages;
    private final ExpectationReader expectations;

    ExampleReader(List<MessageDraft> messages, ExpectationReader expectations) {
        this.messages = messages;
        this.expectations = expectations;
    }

    /** All examples that could be read, in the document's order. */
    List<Example> readAll(Section root) {
        List<Example> examples = new ArrayList<>();
        int number = 0;
        for (Section section : root.items("examples")) {
            number++;
            if (section.isClean()) {
                read(section, section.text("name", "example " + number)).ifPresent(examples::add);
            }
        }
        return examples;
    }

    private Optional<Example> read(Section section, String name) {
        boolean formed = exactlyOne(section, name, "hex", "text") & givesOrRejected(section, name);
        int message = message(section);
        if (!formed || message < 0) {
            return Optional.empty();
        }
        Optional<ByteText> bytes =
                section.has("hex") ? Words.hex(section, "hex") : Optional.of(Words.utf8(section, "text"));
        Optional<ExpectationReader.Expectations> expected = expectations.read(section, name, message);
        Optional<Example.Circumstances> circumstances = new CircumstancesReader(section, messages.get(message)).read();
        if (bytes.isEmpty() || expected.isEmpty() || circumstances.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Example(
                name,
                message,
                bytes.get(),
                expected.get().gives(),
                expected.get().facts(),
                expected.get().absent(),
                section.text("rejected", ""),
                circumstances.get(),
                section.line(),
                section.column()));
    }

    /** Index of the message that the example is a frame of, -1 where there is none. */
    private int message(Section section) {
        if (!section.has("message")) {
            // A profile with an empty list of messages has a problem already.
            return messages.isEmpty() ? -1 : 0;
        }
        String id = section.text("message", "");
        List<String> ids = messages.stream().map(MessageDraft::id).toList();
        if (!ids.contains(id)) {
            section.unknown("message", "message", id, ids);
        }
        return ids.indexOf(id);
    }

    private static boolean exactlyOne(Section section, String name, String one, String other) {
        if (section.has(one) != section.has(other)) {
            return true;
        }
        String got = section.has(one) ? "both" : "none";
        section.error(name + " must have exactly one of " + one + ", " + other + ", got " + got);
        return false;
    }

    private static boolean givesOrRejected(Section section, String name) {
        if (section.has("rejected") && section.has("facts") && !section.has("gives")) {
            section.error("facts", "a rejected frame gives no facts; remove one of facts, rejected");
            return false;
        }
        return section.has("facts") && !section.has("rejected") || exactlyOne(section, name, "gives", "rejected");
    }
}
