package settlemark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.session.StoreTools;

/** {@code settlemark store compact}: gives unused room back. */
@Command(
        name = "compact",
        headerHeading = "Examples:%n" + "  settlemark store compact%n" + "  settlemark store compact w.settlemark%n%n",
        header = "Give the unused room in a workspace back.",
        description = {
            "",
            "Writes it anew beside the file, checks that, and puts it in the file's place in one step. Needs as much free"
                    + " room as the workspace takes, and that no other program has it open.",
            "Exit codes: 0 done, 1 it is in use or cannot be written, 5 it is damaged and left as it is."
        },
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class StoreCompactCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(arity = "0..1", paramLabel = "WORKSPACE", description = "Your own where none is named.")
    @Nullable
    Path workspace;

    @Spec
    @Nullable
    CommandSpec spec;

    StoreCompactCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Path file = StoreText.file(own, program, workspace);
        StoreTools.Sizes sizes = program.tools().compact(file);
        own.commandLine()
                .getOut()
                .println(file + ": " + sizes.beforeBytes() + " bytes before, " + sizes.afterBytes() + " now");
        return Program.DONE;
    }
}
