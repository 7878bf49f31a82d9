package settlemark.store;

import java.util.List;

/**
 * What a check knows of a probe.
 *
 * @param name as people call it, or its position where no name can be read
 * @param channels their names; empty where the profile cannot be read
 * @param samples that are counted in its row, -1 where there is none
 */
record ProbeFacts(String name, List<String> channels, long samples) {
    ProbeFacts {
        channels = List.copyOf(channels);
    }

    static ProbeFacts unknown(int position) {
        return new ProbeFacts("number " + position, List.of(), -1);
    }

    String channel(int channel) {
        return channel >= 0 && channel < channels.size() ? channels.get(channel) : "number " + channel;
    }
}
