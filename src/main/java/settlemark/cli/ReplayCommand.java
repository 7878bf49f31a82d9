package settlemark.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code settlemark replay}: a stored session runs again, in the window or as lines. */
@Command(
        name = "replay",
        description = {
            "Runs a stored session again at its own pace or faster, and prints what happened as it happens: steps, readings"
                    + " with their verdicts, notes, lost links. With --window it plays in the review window.",
            "Nothing that is stored is touched."
        },
        header = {
            "Examples:",
            "  settlemark replay latest --speed 100",
            "  settlemark replay 7 --speed 0                as fast as it goes",
            "  settlemark replay 7 --speed 20 --window",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark replay [OPTIONS] SESSION",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {" 0:done", " 1:no display", " 2:wrong usage", " 5:the workspace is damaged"},
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ReplayCommand implements Callable<Integer> {
    private static final int FASTEST = 1000;

    private final Program program;

    @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
    String session = "";

    @Option(
            names = "--speed",
            paramLabel = "N",
            defaultValue = "10",
            description = "How many times as fast as it was, 0 for as fast as it goes; 1 to 100 in the window.")
    int speed;

    @Option(names = "--window", description = "In the review window.")
    boolean window;

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Mixin
    WindowOptions look = new WindowOptions();

    @Spec
    @Nullable
    CommandSpec spec;

    ReplayCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        int[] pixels = look.pixels(own);
        look.speak(own, program);
        int most = window ? StoredDesk.Replay.FASTEST_IN_WINDOW : FASTEST;
        int least = window ? 1 : 0;
        if (speed < least || speed > most) {
            throw new ParameterException(
                    own.commandLine(),
                    "--speed must be " + least + " to " + most + (window ? " in the window" : "") + ", got " + speed);
        }
        return program.stored()
                .replay(
                        new StoredDesk.Replay(
                                session,
                                speed,
                                window,
                                workspace.file(),
                                keyOptions.keys(own),
                                look.dark,
                                pixels[0],
                                pixels[1]),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }
}
