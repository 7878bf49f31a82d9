package settlemark.session;

import java.util.List;
import java.util.stream.IntStream;
import settlemark.measure.Chunk;
import settlemark.profile.Input;
import settlemark.profile.Message;
import settlemark.profile.Profile;

/**
 * Which input of a new profile takes the bytes of each input of a former one: that of the message with the same name,
 * or else of the only message with the same source, or else of the only message of all.
 */
final class InputMap {
    private final Profile before;
    private final int[] after;

    private InputMap(Profile before, int[] after) {
        this.before = before;
        this.after = after;
    }

    static InputMap of(Profile before, Profile after) {
        return new InputMap(
                before,
                before.inputs().stream().mapToInt(i -> find(before, i, after)).toArray());
    }

    private static int find(Profile before, Input input, Profile after) {
        Message message = before.messages().get(input.message());
        List<Integer> candidates = IntStream.range(0, after.inputs().size())
                .filter(i -> after.inputs().get(i).kind() == input.kind())
                .boxed()
                .toList();
        List<Integer> named = candidates.stream()
                .filter(i -> message(after, i).id().equals(message.id()))
                .toList();
        if (named.size() == 1) {
            return named.get(0);
        }
        List<Integer> alike = candidates.stream()
                .filter(i -> message(after, i).source().equals(message.source()))
                .toList();
        if (alike.size() == 1) {
            return alike.get(0);
        }
        boolean onlyOne = before.messages().size() == 1 && candidates.size() == 1;
        return onlyOne ? candidates.get(0) : Chunk.STRAY;
    }

    private static Message message(Profile profile, int input) {
        return profile.messages().get(profile.inputs().get(input).message());
    }

    /** Stray bytes stay stray. */
    int after(int input) {
        return input >= 0 && input < after.length ? after[input] : Chunk.STRAY;
    }

    /** Names of former messages that have no counterpart. */
    List<String> lostMessages() {
        return IntStream.range(0, after.length)
                .filter(i -> after[i] == Chunk.STRAY)
                .mapToObj(i -> message(before, i).id())
                .distinct()
                .toList();
    }
}
