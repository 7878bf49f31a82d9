package settlemark.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code settlemark verify}: holds a seal against what is there now. */
@Command(
        name = "verify",
        description = {
            "Checks a sealed record: whether the session's bytes, samples, readings and acts, and the record's files"
                    + " beside the seal, are what was sealed. Names each part that is not.",
            "A seal proves that the holder of its key sealed exactly this. It does not prove who that was, that the"
                    + " computer's clock was right, or that the instruments were.",
            "Exit codes: 0 untouched, 3 changed, 5 the workspace is damaged."
        },
        header = {
            "Examples:",
            "  settlemark verify records/2026-03-14-0931-ash-lane-seal.json",
            "  settlemark verify visit-seal.json --workspace w.settlemark",
            "  settlemark verify visit.pdf --key person.pem",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark verify FILE [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class VerifyCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(
            paramLabel = "FILE",
            description = "The seal KEY-seal.json, a file of the record beside it, or an exported session.")
    Path file = Path.of("");

    @Option(
            names = "--workspace",
            paramLabel = "FILE",
            description = "The workspace with the session, if not your own.")
    @Nullable
    Path workspace;

    @Option(
            names = "--key",
            paramLabel = "FILE",
            description = "Public key of the person, as \"settlemark key show\" prints it; another key is a change.")
    @Nullable
    Path key;

    @Spec
    @Nullable
    CommandSpec spec;

    VerifyCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Commands.checkFile(own, file);
        if (key != null) {
            Commands.checkFile(own, key);
        }
        return program.stored()
                .verify(
                        new StoredDesk.Verify(file, Optional.ofNullable(workspace), Optional.ofNullable(key)),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }
}
