package settlemark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.measure.Role;
import settlemark.profile.Profile;

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
            "  settlemark log --probe gauge=/dev/pts/3 --profile gauge=demo-gauge --seconds 300 --workspace w.settlemark",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis =
                "settlemark log --probe NAME=PORT [--profile NAME=PROFILE] [--role NAME.CHANNEL=ROLE] [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class LogCommand implements Callable<Integer> {
    private final Program program;

    @Mixin
    ProbeOptions options = new ProbeOptions();

    @Option(
            names = "--role",
            paramLabel = "NAME.CHANNEL=ROLE",
            description = "Where a channel is connected: inlet, manifold, supply, return or stack.")
    Map<String, String> roles = new LinkedHashMap<>();

    @Option(names = "--seconds", paramLabel = "S", description = "End after so many seconds.")
    @Nullable
    Double seconds;

    @Option(names = "--workspace", paramLabel = "FILE", description = "Another workspace than your own.")
    @Nullable
    Path workspace;

    @Option(names = "--title", paramLabel = "TEXT", defaultValue = "log", description = "What the session is called.")
    String title = "log";

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
        List<Program.Probe> probes = new ArrayList<>();
        for (ProbeOptions.Chosen probe : chosen.get()) {
            probes.add(new Program.Probe(
                    probe.name(), probe.port(), probe.profile(), roles(own, probe.name(), probe.profile())));
        }
        OptionalDouble limit = Commands.seconds(own, seconds);
        return program.log(
                new Program.Log(probes, Optional.ofNullable(workspace), limit, title),
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

    private List<Program.RoleOf> roles(CommandSpec own, String name, Profile profile) {
        List<Program.RoleOf> found = new ArrayList<>();
        for (Map.Entry<String, String> entry : roles.entrySet()) {
            if (entry.getKey().startsWith(name + ".")) {
                String channel = entry.getKey().substring(name.length() + 1);
                if (profile.channelIndex(channel).isEmpty()) {
                    throw new ParameterException(
                            own.commandLine(),
                            "profile " + profile.id() + " has no channel \"" + channel + "\"; it has "
                                    + profile.channels().stream()
                                            .map(c -> c.name())
                                            .toList());
                }
                Role role = Role.ofWord(entry.getValue())
                        .orElseThrow(() -> new ParameterException(
                                own.commandLine(),
                                "a role is inlet, manifold, supply, return or stack; got \"" + entry.getValue()
                                        + "\""));
                found.add(new Program.RoleOf(channel, role));
            }
        }
        return found;
    }
}
