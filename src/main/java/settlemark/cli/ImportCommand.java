package settlemark.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code settlemark import}: exported samples back into a workspace. */
@Command(
        name = "import",
        description = {
            "Reads samples that \"settlemark export --csv\" wrote into a workspace, as a session of its own that is marked"
                    + " as imported. The whole file is looked at first: with one wrong line nothing is imported.",
            "An imported session has no bytes of its probes, so no record can be made of it. What was SIMULATED stays so.",
            "Exit codes: 0 done, 1 the workspace cannot be written, 2 no such file, 5 the file is not as an export."
        },
        header = {
            "Examples:",
            "  settlemark import samples.csv",
            "  settlemark import samples.csv --workspace other.settlemark --title \"bench of March\"",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark import FILE [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ImportCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "FILE", description = "A CSV file from an export.")
    Path file = Path.of("");

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--title", paramLabel = "TEXT", description = "What the session is called.")
    @Nullable
    String title;

    @Spec
    @Nullable
    CommandSpec spec;

    ImportCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Commands.checkFile(own, file);
        return program.stored()
                .importSamples(
                        new StoredDesk.Import(file, workspace.file(), Optional.ofNullable(title)),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }
}
