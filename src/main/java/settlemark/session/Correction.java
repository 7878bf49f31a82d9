package settlemark.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import settlemark.measure.Channel;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.profile.Profile;

/**
 * A session as it is decoded again: the same events, with other profiles for some probes. Roles go over by the names of
 * the channels, bytes by the names of the messages; what finds no counterpart is named.
 */
public final class Correction {
    private final SessionHeader former;
    private final SessionHeader header;
    private final List<Lost> lost;
    private final List<InputMap> inputs = new ArrayList<>();

    private Correction(SessionHeader former, List<ProbeSetup> probes, List<Lost> lost) {
        this.former = former;
        this.header = former.withProbes(probes);
        this.lost = new ArrayList<>(lost);
        for (int i = 0; i < probes.size(); i++) {
            ProbeSetup before = former.probes().get(i);
            InputMap map = InputMap.of(before.profile(), probes.get(i).profile());
            inputs.add(map);
            map.lostMessages()
                    .forEach(m -> this.lost.add(new Lost(
                            before.name(),
                            "the bytes of message " + m,
                            "the new profile has no such message: they count as refused")));
        }
    }

    /**
     * What has no counterpart in a probe's new profile.
     *
     * @param probe name of the probe
     * @param what such as {@code manifold at port-2}
     * @param why such as {@code the new profile has no channel "port-2"}
     */
    public record Lost(String probe, String what, String why) {}

    /**
     * Why the profiles cannot be used, in words; empty where they can.
     *
     * @param profiles by the name of the probe; a probe that is not in it keeps its own
     */
    public static List<String> problems(SessionHeader header, Map<String, Profile> profiles) {
        List<String> names = header.probes().stream().map(ProbeSetup::name).toList();
        List<String> problems = new ArrayList<>();
        profiles.keySet().stream()
                .filter(n -> !names.contains(n))
                .sorted()
                .forEach(n -> problems.add("the session has no probe \"" + n + "\"; it has " + names));
        for (ProbeSetup probe : header.probes()) {
            Profile after = profiles.getOrDefault(probe.name(), probe.profile());
            if (after.simulated() != probe.profile().simulated()) {
                problems.add("what came from probe " + probe.name() + " is "
                        + (after.simulated() ? "not simulated, but the new profile" : "simulated, but the new profile")
                        + " says simulated: " + after.simulated() + "; that mark cannot change afterwards");
            }
        }
        return problems;
    }

    /**
     * With other profiles.
     *
     * @param profiles as for {@link #problems}, which must find none
     */
    public static Correction of(SessionHeader header, Map<String, Profile> profiles) {
        List<String> problems = problems(header, profiles);
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", problems));
        }
        List<ProbeSetup> probes = new ArrayList<>();
        List<Lost> lost = new ArrayList<>();
        for (ProbeSetup probe : header.probes()) {
            Profile after = profiles.getOrDefault(probe.name(), probe.profile());
            probes.add(new ProbeSetup(probe.name(), probe.address(), after, roles(probe, after, lost)));
        }
        return new Correction(header, probes, lost);
    }

    /** As a stored rereading was made. */
    public static Correction of(SessionHeader header, Rereading rereading) {
        return new Correction(header, rereading.probes(), List.of());
    }

    private static Map<String, Role> roles(ProbeSetup probe, Profile after, List<Lost> lost) {
        Map<String, Role> kept = new HashMap<>();
        probe.roles().entrySet().stream().sorted(Map.Entry.comparingByValue()).forEach(e -> {
            String why = unfit(after, e.getKey(), e.getValue());
            if (why.isEmpty()) {
                kept.put(e.getKey(), e.getValue());
            } else {
                lost.add(new Lost(probe.name(), e.getValue().word() + " at " + e.getKey(), why));
            }
        });
        return kept;
    }

    private static String unfit(Profile after, String name, Role role) {
        return after.channelIndex(name)
                .map(i -> {
                    Channel channel = after.channels().get(i);
                    return channel.dimension() == role.dimension()
                            ? ""
                            : "channel \"" + name + "\" of the new profile is in "
                                    + channel.unit().symbol();
                })
                .orElse("the new profile has no channel \"" + name + "\"");
    }

    /** The session's own header, with the profiles of the day. */
    public SessionHeader former() {
        return former;
    }

    /** The header to decode with. */
    public SessionHeader header() {
        return header;
    }

    public List<Lost> lost() {
        return List.copyOf(lost);
    }

    /** A stored event as the new profiles take it. */
    public SessionEvent event(SessionEvent stored) {
        if (!(stored instanceof SessionEvent.Bytes bytes)) {
            return stored;
        }
        Chunk chunk = bytes.chunk();
        int input = inputs.get(bytes.probe()).after(chunk.input());
        return input == chunk.input()
                ? stored
                : new SessionEvent.Bytes(bytes.probe(), new Chunk(chunk.timeNanos(), input, chunk.bytes()));
    }
}
