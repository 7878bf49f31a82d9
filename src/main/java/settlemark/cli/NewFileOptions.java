package settlemark.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Of a command that makes a new file out of a workspace. */
final class NewFileOptions {
    @Parameters(arity = "0..1", paramLabel = "WORKSPACE", description = "Your own where none is named.")
    @Nullable
    Path workspace;

    @Option(
            names = "--to",
            paramLabel = "FILE",
            required = true,
            description = "The new workspace. A file that is there already is never overwritten.")
    Path target = Path.of("");

    /** The workspace that is there, and none where the new one goes; anything else is a usage error. */
    Path source(CommandSpec own, Program program) {
        Commands.checkNew(own, "--to", target);
        return StoreText.file(own, program, workspace);
    }
}
