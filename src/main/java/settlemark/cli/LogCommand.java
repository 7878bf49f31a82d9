package settlemark.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
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
            "  settlemark log --probe bench=/dev/ttyUSB0 --profile bench=my-bench.yaml --window",
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
    StreamOptions stream = new StreamOptions();

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

    @Option(names = "--window", description = "In a window, a low row a channel: value, state and its last minute.")
    boolean window;

    @Mixin
    WindowOptions look = new WindowOptions();

    @Mixin
    SettingOptions settings = new SettingOptions();

    @Spec
    @Nullable
    CommandSpec spec;

    LogCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Optional<List<Program.Probe>> probes = stream.probes(own);
        if (probes.isEmpty()) {
            return Program.CHECK_FAILED;
        }
        ProbeKeys keys = stream.keys(own, probes.get());
        OptionalDouble limit = Commands.seconds(own, seconds);
        RawBytes bytes = dropBytes ? RawBytes.DROPPED : RawBytes.KEPT;
        look.speak(own, program);
        int[] pixels = look.pixels(own);
        Optional<Program.Log.Shown> shown =
                window ? Optional.of(new Program.Log.Shown(look.dark, pixels[0], pixels[1])) : Optional.empty();
        return program.log(
                new Program.Log(
                        probes.get(),
                        workspace.file(),
                        limit,
                        title,
                        stream.anotherDevice,
                        !stream.noRoles,
                        keys,
                        bytes,
                        settings.choices(own),
                        shown),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
