package settlemark.ui;

import java.util.Optional;
import settlemark.session.ChannelView;
import settlemark.settle.FromInstrument;

/** That a value on the screen has its instrument's correction in it, and what the instrument itself indicates. */
final class Corrected {
    private Corrected() {}

    /** The name of a value, which says so. */
    static String name(String name, FromInstrument instrument) {
        return instrument.corrects() ? Words.say("{0}, corrected", name) : name;
    }

    /** By how much, by which instrument, and what it indicates; empty where nothing is corrected. */
    static Optional<String> note(ChannelView channel) {
        if (!channel.instrument().corrects()) {
            return Optional.empty();
        }
        int decimals = Gap.decimals(channel) + 1;
        return Optional.of(Words.say(
                "indicates {0}, {1} by {2}",
                Numbers.fixed(channel.indicated(), decimals),
                Numbers.signed(channel.correction(), decimals),
                channel.instrument().serial()));
    }
}
