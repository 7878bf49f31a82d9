package settlemark.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code settlemark record}: makes a job's record again. */
@Command(
        name = "record",
        description = "Makes the record of a stored job: PDF and CSV. The same session gives the same bytes.",
        header = {
            "Examples:",
            "  settlemark record latest",
            "  settlemark record 12 --workspace w.settlemark --out records",
            "  settlemark record latest --rereading 1",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark record [OPTIONS] SESSION",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class RecordCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
    String session = "";

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--out", paramLabel = "FOLDER", description = "Where the record goes.")
    @Nullable
    Path folder;

    @Option(
            names = "--rereading",
            paramLabel = "N",
            description = "From what \"settlemark reread\" has decoded again, instead of what was decoded on the day.")
    @Nullable
    Integer rereading;

    @Spec
    @Nullable
    CommandSpec spec;

    RecordCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        OptionalInt number = rereading == null ? OptionalInt.empty() : OptionalInt.of(rereading);
        return program.record(
                new Program.Record(
                        session, workspace.file(), Optional.ofNullable(folder), number, keyOptions.keys(own)),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
