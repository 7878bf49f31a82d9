package settlemark.profile;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether the messages of a profile can be told apart by where they come from. */
final class MessagesCheck {
    private MessagesCheck() {}

    static void run(List<MessageDraft> messages) {
        Map<Object, String> from = new HashMap<>();
        for (MessageDraft message : messages) {
            message.source().flatMap(MessagesCheck::origin).ifPresent(origin -> {
                String earlier = from.putIfAbsent(origin, message.title());
                if (earlier != null) {
                    complain(message, earlier);
                }
            });
            LayoutCheck.run(message);
        }
    }

    private static void complain(MessageDraft message, String earlier) {
        List<String> keys = message.section().present(SourceReader.KEYS);
        if (keys.isEmpty()) {
            message.section()
                    .error(message.title() + " comes unasked as " + earlier
                            + " does: nothing tells them apart; make one message of them, with when in its fields");
        } else {
            message.section()
                    .error(
                            keys.get(0),
                            message.title() + " comes from where " + earlier
                                    + " does; make one message of them, with when in its fields");
        }
    }

    /** What brings the bytes, the same for two messages that could not be told apart; answers always can. */
    private static Optional<Object> origin(Source source) {
        if (source instanceof Source.Characteristic characteristic) {
            return Optional.of(characteristic.uuid() + " of " + characteristic.service());
        }
        boolean asked = source instanceof Source.Answer || source instanceof Source.Registers;
        return asked ? Optional.empty() : Optional.of(source);
    }
}
