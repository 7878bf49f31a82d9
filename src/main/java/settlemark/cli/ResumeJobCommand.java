package settlemark.cli;

import java.io.InputStream;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
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

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Mixin
    JobOptions job = new JobOptions();

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
        job.check(own);
        return program.resumeJob(
                new Program.ResumeJob(
                        session,
                        job.bench(),
                        job.workspace.file(),
                        job.folder(),
                        keyOptions.keys(own),
                        job.instruments(own)),
                job.talk(program, own, in),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
