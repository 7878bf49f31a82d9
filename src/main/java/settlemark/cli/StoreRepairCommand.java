package settlemark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.session.RepairReport;

/** {@code settlemark store repair}: what can be read of a damaged workspace into a new one. */
@Command(
        name = "repair",
        headerHeading = "Examples:%n" + "  settlemark store repair w.settlemark --to repaired.settlemark%n"
                + "  settlemark store repair --to repaired.settlemark%n%n",
        header = "Save what can be read of a damaged workspace into a new one.",
        description = {
            "",
            "The damaged file stays as it is. The new one passes the check; a session that has lost something has a note"
                    + " that says what. Where events are lost, no record can be made of that session any more. Needs"
                    + " twice the file's size where the new one goes, and that no program writes meanwhile.",
            "Exit codes: 0 all was saved, 1 it cannot be read or written, 5 some or all is lost."
        },
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class StoreRepairCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(arity = "0..1", paramLabel = "WORKSPACE", description = "Your own where none is named.")
    @Nullable
    Path workspace;

    @Option(
            names = "--to",
            paramLabel = "FILE",
            required = true,
            description = "The new workspace. One that is there already is never overwritten.")
    Path target = Path.of("");

    @Spec
    @Nullable
    CommandSpec spec;

    StoreRepairCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Commands.checkNew(own, "--to", target);
        RepairReport report = program.tools().repair(StoreText.file(own, program, workspace), target, program.now());
        own.commandLine().getOut().print(StoreText.words(report));
        return report.lost().isEmpty() ? Program.DONE : Program.DAMAGED;
    }
}
