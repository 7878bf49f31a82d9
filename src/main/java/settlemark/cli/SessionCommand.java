package settlemark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.session.Note;
import settlemark.session.StoreException;

/** {@code settlemark session}: what lies beside a session, and the way to another computer. */
@Command(
        name = "session",
        description = {
            "A whole session in one file for another computer, and what people put beside sessions.",
            "Exit codes: 0 done, 1 fault, 2 wrong usage, 3 it is not as it was sealed, 5 it is damaged, or a photograph is no picture."
        },
        header = {
            "Examples:",
            "  settlemark session export latest --to visit.settlemark",
            "  settlemark session import visit.settlemark --key person.pem",
            "  settlemark session note latest \"Filter was dusty; customer told.\"",
            "  settlemark session attach latest plate.jpg burner.jpg",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark session (export | import | note | attach | papers) [OPTIONS]",
        mixinStandardHelpOptions = true)
final class SessionCommand implements Runnable {
    private static final String SESSION = "Number or key of a session, or \"latest\".";

    private final Program program;

    @Spec
    @Nullable
    CommandSpec spec;

    private SessionCommand(Program program) {
        this.program = program;
    }

    static CommandLine line(Program program) {
        return new CommandLine(new SessionCommand(program));
    }

    @Override
    public void run() {
        throw new ParameterException(
                Commands.spec(spec).commandLine(),
                "session needs a command: session export, import, note, attach or papers");
    }

    @Command(
            name = "export",
            description =
                    "Writes a session into one new file: bytes, samples, readings, acts, profiles, notes, photographs,"
                            + " seals and reviews. It is sealed first where it is not.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int export(
            @Parameters(paramLabel = "SESSION", description = SESSION) String session,
            @Option(names = "--to", paramLabel = "FILE", required = true, description = "A new file.") Path file,
            @Mixin WorkspaceOption workspace,
            @Option(names = "--phrase-file", paramLabel = "FILE", description = "Pass phrase of the key for seals.")
                    @Nullable
                    Path phraseFile)
            throws StoreException, IOException {
        CommandSpec own = Commands.spec(spec);
        Commands.checkNew(own, "--to", file);
        return program.sessions()
                .export(
                        new SessionDesk.Transfer(
                                session, file, workspace.file(), Optional.ofNullable(phraseFile), Optional.empty()),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }

    @Command(
            name = "import",
            description = "Takes in a file that \"session export\" has written, once it is whole and as it was sealed.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int takeIn(
            @Parameters(paramLabel = "FILE", description = "The file.") Path file,
            @Mixin WorkspaceOption workspace,
            @Option(names = "--key", paramLabel = "FILE", description = "Public key that it must be sealed with.")
                    @Nullable
                    Path key)
            throws StoreException, IOException {
        CommandSpec own = Commands.spec(spec);
        Commands.checkFile(own, file);
        if (key != null) {
            Commands.checkFile(own, key);
        }
        return program.sessions()
                .takeIn(
                        new SessionDesk.Transfer(
                                "", file, workspace.file(), Optional.empty(), Optional.ofNullable(key)),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }

    @Command(
            name = "note",
            description = "Puts a note beside a session, with the time.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int note(
            @Parameters(index = "0", paramLabel = "SESSION", description = SESSION) String session,
            @Parameters(index = "1", paramLabel = "TEXT", description = "What is to be noted.") String text,
            @Mixin WorkspaceOption workspace)
            throws StoreException, IOException {
        CommandSpec own = Commands.spec(spec);
        if (text.isBlank() || text.length() > Note.MOST_CHARACTERS) {
            throw new ParameterException(
                    own.commandLine(),
                    "a note has 1 to " + Note.MOST_CHARACTERS + " characters, got "
                            + (text.isBlank() ? "none" : text.length()) + "; attach a longer text as a file");
        }
        return add(new SessionDesk.Paper(session, text, List.of(), false, workspace.file()));
    }

    @Command(
            name = "attach",
            description =
                    "Puts photographs and other files beside a session. Photographs are made anew: upright, at most"
                            + " 1600 pixels a side, and without what the camera wrote into them, such as the place. Other files"
                            + " are kept as they are.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int attach(
            @Parameters(index = "0", paramLabel = "SESSION", description = SESSION) String session,
            @Parameters(index = "1..*", arity = "1..*", paramLabel = "FILE", description = "The files.")
                    List<Path> files,
            @Option(names = "--keep-location", description = "Keep photographs as they are, with place and all.")
                    boolean keepLocation,
            @Mixin WorkspaceOption workspace)
            throws StoreException, IOException {
        CommandSpec own = Commands.spec(spec);
        for (Path file : files) {
            Commands.checkFile(own, file);
            if (!Files.isRegularFile(file)) {
                throw new ParameterException(own.commandLine(), file + " is no file that can be kept");
            }
        }
        return add(new SessionDesk.Paper(session, "", files, keepLocation, workspace.file()));
    }

    private int add(SessionDesk.Paper paper) throws StoreException, IOException {
        CommandLine line = Commands.spec(spec).commandLine();
        return program.sessions().add(paper, line.getOut(), line.getErr());
    }

    @Command(
            name = "papers",
            description = "Lists notes, photographs, files, seals and reviews of a session.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int papers(
            @Parameters(paramLabel = "SESSION", description = SESSION) String session, @Mixin WorkspaceOption workspace)
            throws StoreException, IOException {
        CommandLine line = Commands.spec(spec).commandLine();
        return program.sessions().papers(session, workspace.file(), line.getOut(), line.getErr());
    }
}
