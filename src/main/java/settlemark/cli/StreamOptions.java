package settlemark.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.session.ProbeKeys;

/** Which probes are streamed, where their channels are connected, and by which keys: for each command that streams. */
final class StreamOptions {
    @Mixin
    ProbeOptions options = new ProbeOptions();

    @Option(
            names = "--role",
            paramLabel = "NAME.CHANNEL=ROLE",
            description = "Where a channel is connected: inlet, manifold, supply, return, stack, supply-static,"
                    + " return-static, o2, co2, co or room-co. A probe without any"
                    + " has those that its device had the last time.")
    Map<String, String> roles = new LinkedHashMap<>();

    @Option(names = "--no-roles", description = "Take no roles from the last time.")
    boolean noRoles;

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Option(
            names = "--another-device",
            paramLabel = "NAME",
            description = "This probe is meant to be another device than the last time. Without it a log does not start"
                    + " where the device at a probe's port is not the one that the workspace's newest session with a"
                    + " probe of that name was streamed from: USB ports change their numbers.")
    Set<String> anotherDevice = new LinkedHashSet<>();

    /** What was asked for; empty where a profile has errors, which are printed. */
    Optional<List<Program.Probe>> probes(CommandSpec own) throws IOException {
        Optional<List<ProbeOptions.Chosen>> chosen = options.choose(own);
        if (chosen.isEmpty()) {
            return Optional.empty();
        }
        checkRoles(own);
        checkOtherDevices(own);
        List<Program.Probe> probes = new ArrayList<>();
        for (ProbeOptions.Chosen probe : chosen.get()) {
            probes.add(new Program.Probe(
                    probe.name(), probe.port(), probe.profile(), roles(own, probe.name(), probe.profile())));
        }
        return Optional.of(probes);
    }

    private void checkRoles(CommandSpec own) {
        for (String key : roles.keySet()) {
            String name = key.substring(0, Math.max(0, key.indexOf('.')));
            if (!options.names().contains(name)) {
                throw new ParameterException(
                        own.commandLine(),
                        "--role must begin with a probe and a channel, such as gauge.port-1=inlet; got \"" + key
                                + "\"");
            }
        }
    }

    ProbeKeys keys(CommandSpec own, List<Program.Probe> probes) throws IOException {
        for (String name : keyOptions.files.keySet()) {
            boolean needed = probes.stream().anyMatch(p -> p.name().equals(name) && ProbeKeys.mayNeedOne(p.profile()));
            if (!needed) {
                throw new ParameterException(
                        own.commandLine(),
                        "--key names \"" + name + "\", and there is no such probe whose profile protects its frames");
            }
        }
        return keyOptions.keys(own);
    }

    private void checkOtherDevices(CommandSpec own) {
        for (String name : anotherDevice) {
            if (!options.names().contains(name)) {
                throw new ParameterException(
                        own.commandLine(),
                        "--another-device names \"" + name + "\", but no --probe does; the probes are "
                                + options.names());
            }
        }
    }

    private List<Program.RoleOf> roles(CommandSpec own, String name, Profile profile) {
        List<Program.RoleOf> found = new ArrayList<>();
        for (Map.Entry<String, String> entry : roles.entrySet()) {
            if (entry.getKey().startsWith(name + ".")) {
                String channel = entry.getKey().substring(name.length() + 1);
                if (profile.channelIndex(channel).isEmpty()) {
                    throw new ParameterException(
                            own.commandLine(),
                            "profile " + profile.id() + " has no channel \"" + channel + "\"; it has "
                                    + names(profile, c -> true));
                }
                Role role = Role.ofWord(entry.getValue())
                        .orElseThrow(() -> new ParameterException(
                                own.commandLine(), "a role is " + words() + "; got \"" + entry.getValue() + "\""));
                checkFits(own, profile, channel, role);
                found.add(new Program.RoleOf(channel, role));
            }
        }
        return found;
    }

    private static String words() {
        List<String> words = Arrays.stream(Role.values()).map(Role::word).toList();
        return String.join(", ", words.subList(0, words.size() - 1)) + " or " + words.get(words.size() - 1);
    }

    private static void checkFits(CommandSpec own, Profile profile, String name, Role role) {
        Channel channel = profile.channels().get(profile.channelIndex(name).orElseThrow());
        if (role.fits(channel)) {
            return;
        }
        List<String> roles = Arrays.stream(Role.values())
                .filter(r -> r.fits(channel))
                .map(Role::word)
                .toList();
        List<String> channels = names(profile, role::fits);
        throw new ParameterException(
                own.commandLine(),
                "channel \"" + name + "\" of profile " + profile.id() + " is in "
                        + channel.unit().symbol() + ", and " + role.word() + " is a "
                        + role.dimension().name().toLowerCase(Locale.ROOT) + ": "
                        + (roles.isEmpty()
                                ? "no role takes such a channel, so leave it out"
                                : "as a role it can be one of " + roles)
                        + (channels.isEmpty() ? "" : ", and " + role.word() + " can be one of " + channels));
    }

    private static List<String> names(Profile profile, Predicate<Channel> which) {
        return profile.channels().stream().filter(which).map(Channel::name).toList();
    }
}
