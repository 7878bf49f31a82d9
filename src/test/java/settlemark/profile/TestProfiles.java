package settlemark.profile;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import settlemark.measure.Channel;

/** Profiles for tests that never decode a byte: only their channels matter. */
public final class TestProfiles {
    private TestProfiles() {}

    public static Profile of(
            String id, String name, boolean simulated, String digest, String text, List<Channel> channels) {
        List<ChannelSource> sources = IntStream.range(0, channels.size())
                .mapToObj(i -> new ChannelSource(channels.get(i), List.of(new FieldRef(0, i)), 1, 1))
                .toList();
        return new Profile(
                id,
                name,
                "",
                simulated,
                digest,
                text,
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(new Message(
                        "frame",
                        new Source.Unasked(),
                        new Framing.Fixed(ByteText.EMPTY, 16),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        1)),
                sources,
                List.of(),
                List.of());
    }
}
