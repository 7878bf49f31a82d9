package settlemark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
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

    @Mixin
    NewFileOptions options = new NewFileOptions();

    @Spec
    @Nullable
    CommandSpec spec;

    StoreRepairCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Path source = options.source(own, program);
        RepairReport report = program.tools().repair(source, options.target, program.now());
        own.commandLine().getOut().print(StoreText.words(report));
        return report.lost().isEmpty() ? Program.DONE : Program.DAMAGED;
    }
}
