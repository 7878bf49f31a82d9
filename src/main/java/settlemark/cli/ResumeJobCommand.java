package settlemark.cli;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code job resume}: goes on with a job that was left or cut off. */
@Command(
        name = "resume",
        description =
                "Goes on with a job that was left or cut off, at the step where it stood, with everything that was"
                        + " recorded. The time between is marked as a gap, and nothing is read across it.",
        header = {"Examples:", "  settlemark job resume latest", "  settlemark job resume --rig latest", ""},
        synopsisHeading = "Usage: ",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ResumeJobCommand implements Callable<Integer> {
    private final Program program;
    private final InputStream in;

    @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
    String session = "";

    @Option(names = "--rig", description = "The session is on the simulated furnace, which begins cold.")
    boolean rig;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of the rig's instruments.")
    long seed;

    @Option(names = "--fault", paramLabel = "FAULT", description = "Something that is wrong with the rig, as in demo.")
    List<String> faults = new ArrayList<>();

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Option(
            names = "--patience",
            paramLabel = "MINUTES",
            defaultValue = "20",
            description = "How long a reading may take to settle before you are asked what to do.")
    double patienceMinutes;

    @Option(
            names = "--workspace",
            paramLabel = "FILE",
            description = "Another workspace than your own; with --rig, than the demo's.")
    @Nullable
    Path workspace;

    @Option(names = "--out", paramLabel = "FOLDER", description = "Where the record goes.")
    @Nullable
    Path folder;

    @Spec
    @Nullable
    CommandSpec spec;

    ResumeJobCommand(Program program, InputStream in) {
        this.program = program;
        this.in = in;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        NewJobCommand.checkPatience(own, patienceMinutes);
        return program.resumeJob(
                new Program.ResumeJob(
                        session,
                        rig ? Optional.of(new Program.Bench(seed, faults)) : Optional.empty(),
                        Optional.ofNullable(workspace),
                        Optional.ofNullable(folder),
                        keyOptions.keys(own)),
                NewJobCommand.talk(program, own, in, patienceMinutes),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
