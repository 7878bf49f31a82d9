package settlemark.fuzz;

import java.util.List;
import settlemark.measure.Chunk;
import settlemark.profile.Framing;
import settlemark.profile.Input;
import settlemark.profile.Profile;

/**
 * What a profile's chunks come from.
 *
 * @param streams by input, whether its chunks are parts of a stream, so that they may be cut anywhere; the others are
 *     packets
 */
record Inputs(List<Boolean> streams) {
    static Inputs of(Profile profile) {
        return new Inputs(profile.inputs().stream()
                .map(input -> input.kind() == Input.Kind.FRAMES
                        && !(profile.messages().get(input.message()).framing() instanceof Framing.Packet))
                .toList());
    }

    int count() {
        return streams.size();
    }

    /** Stray chunks are told of one by one, and so are no stream. */
    boolean mayBeCut(int input) {
        return input != Chunk.STRAY && streams.get(input);
    }
}
