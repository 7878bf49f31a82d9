package settlemark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.session.CheckReport;

/** {@code settlemark store check}: is everything as it was stored? */
@Command(
        name = "check",
        headerHeading =
                "Examples:%n" + "  settlemark store check%n" + "  settlemark store check w.settlemark --json%n%n",
        header = "Is everything in a workspace as it was stored?",
        description = {
            "",
            "Reads all of it: pages and indexes, the digest of every block, numbering, statistics, and what belongs to"
                    + " what. Each line of damage names the session, the channel and the time as far as they are known."
                    + " Nothing is changed, and a program may write meanwhile.",
            "Exit codes: 0 whole, 1 it cannot be read, 5 damaged or no workspace."
        },
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class StoreCheckCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(arity = "0..1", paramLabel = "WORKSPACE", description = "Your own where none is named.")
    @Nullable
    Path workspace;

    @Option(names = "--json", description = "Print the report as one JSON object.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    StoreCheckCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        CheckReport report = program.tools().check(StoreText.file(own, program, workspace));
        own.commandLine().getOut().print(json ? StoreText.json(report) : StoreText.words(report));
        return report.whole() ? Program.DONE : Program.DAMAGED;
    }
}
