package settlemark.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which workspace a command works on: the same for every command that takes the person's own where none is named. */
final class WorkspaceOption {
    @Option(names = "--workspace", paramLabel = "FILE", description = "Another workspace than your own.")
    @Nullable
    Path file;

    /** The file named. */
    Optional<Path> file() {
        return Optional.ofNullable(file);
    }
}
