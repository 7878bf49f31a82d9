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
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code settlemark export}: a session's samples for other programs. */
@Command(
        name = "export",
        description = {
            "Writes every sample of a session, a line each, with its unit and its time in ISO 8601. Every number comes"
                    + " back bit for bit with \"settlemark import\".",
            "Into a folder, the session's notes and attachments go as well. Nothing that is there is overwritten.",
            "Exit codes: 0 done, 1 a file cannot be written, 2 no such session, 5 the workspace is damaged."
        },
        header = {
            "Examples:",
            "  settlemark export latest --csv samples.csv",
            "  settlemark export 2026-03-14-0931-ash-lane --csv out/ --workspace w.settlemark",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark export SESSION --csv FILE|FOLDER [--parquet FILE] [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ExportCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
    String session = "";

    @Option(names = "--csv", paramLabel = "FILE|FOLDER", description = "A new CSV file, or a folder that is there.")
    @Nullable
    Path csv;

    @Option(
            names = "--parquet",
            paramLabel = "FILE",
            description = "A new Parquet file. Needs DuckDB on the class path, which does not come with the program.")
    @Nullable
    Path parquet;

    @Option(
            names = "--rereading",
            paramLabel = "N",
            description = "What \"settlemark reread\" has decoded again, instead of what was decoded on the day.")
    @Nullable
    Integer rereading;

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Spec
    @Nullable
    CommandSpec spec;

    ExportCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        if (csv == null && parquet == null) {
            throw new ParameterException(own.commandLine(), "export needs --csv FILE|FOLDER or --parquet FILE");
        }
        OptionalInt number = rereading == null ? OptionalInt.empty() : OptionalInt.of(rereading);
        return program.stored()
                .export(
                        new StoredDesk.Export(
                                session,
                                Optional.ofNullable(csv),
                                Optional.ofNullable(parquet),
                                number,
                                workspace.file()),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }
}
