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
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;

/** {@code settlemark log}: streams probes into a workspace. */
@Command(
        name = "log",
        description = {
            "Streams probes into a workspace until it is interrupted.",
            "Prints \"stored PROBE N\" on stderr after each commit: so many samples of that probe are safe."
        },
        header = {
            "Examples:",
            "  settlemark log --probe meter=/dev/ttyUSB0 --profile meter=my-meter.yaml",
            "  settlemark log --probe air=ble:54:48:E6:8F:80:A5 --profile air=ble-environment --role"
                    + " air.temperature=return",
            "  settlemark log --probe gauge=/dev/pts/3 --profile gauge=demo-gauge --seconds 300 --workspace w.settlemark",
            ""
        },
        synopsisHeading = "Usage: ",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {
            " 0:done",
            " 1:the workspace cannot be written",
            " 2:wrong usage",
            " 3:a profile has a problem",
            " 4:no such probe or port, or another device than the last time",
            " 5:the workspace is damaged"
        },
        customSynopsis =
                "settlemark log --probe NAME=ADDRESS [--profile NAME=PROFILE] [--role NAME.CHANNEL=ROLE] [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class LogCommand implements Callable<Integer> {
    private final Program program;

    @Mixin
    ProbeOptions options = new ProbeOptions();

    @Option(
            names = "--role",
            paramLabel = "NAME.CHANNEL=ROLE",
            description = "Where a channel is connected: inlet, manifold, supply, return or stack. A probe without any"
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

    @Option(names = "--seconds", paramLabel = "S", description = "End after so many seconds.")
    @Nullable
    Double seconds;

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--title", paramLabel = "TEXT", defaultValue = "log", description = "What the session is called.")
    String title = "log";

    @Option(
            names = "--drop-bytes",
            description = "Do not keep the probes' bytes, only what is decoded now. It costs: " + RawBytes.COST + ".")
    boolean dropBytes;

    @Spec
    @Nullable
    CommandSpec spec;

    LogCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Optional<List<ProbeOptions.Chosen>> chosen = options.choose(own);
        if (chosen.isEmpty()) {
            return Program.CHECK_FAILED;
        }
        checkRoles(own);
        checkOtherDevices(own);
        ProbeKeys keys = keys(own, chosen.get());
        List<Program.Probe> probes = new ArrayList<>();
        for (ProbeOptions.Chosen probe : chosen.get()) {
            probes.add(new Program.Probe(
                    probe.name(), probe.port(), probe.profile(), roles(own, probe.name(), probe.profile())));
        }
        OptionalDouble limit = Commands.seconds(own, seconds);
        RawBytes bytes = dropBytes ? RawBytes.DROPPED : RawBytes.KEPT;
        return program.log(
                new Program.Log(probes, workspace.file(), limit, title, anotherDevice, !noRoles, keys, bytes),
                own.commandLine().getOut(),
                own.commandLine().getErr());
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

    private ProbeKeys keys(CommandSpec own, List<ProbeOptions.Chosen> probes) throws IOException {
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
                                own.commandLine(),
                                "a role is inlet, manifold, supply, return or stack; got \"" + entry.getValue()
                                        + "\""));
                checkFits(own, profile, channel, role);
                found.add(new Program.RoleOf(channel, role));
            }
        }
        return found;
    }

    private static void checkFits(CommandSpec own, Profile profile, String name, Role role) {
        Channel channel = profile.channels().get(profile.channelIndex(name).orElseThrow());
        if (channel.dimension() == role.dimension()) {
            return;
        }
        List<String> roles = Arrays.stream(Role.values())
                .filter(r -> r.dimension() == channel.dimension())
                .map(Role::word)
                .toList();
        List<String> channels = names(profile, c -> c.dimension() == role.dimension());
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
