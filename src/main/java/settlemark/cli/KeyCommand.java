package settlemark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.session.StoreException;

/** {@code settlemark key}: the key that seals records. */
@Command(
        name = "key",
        description = {
            "Shows, makes or protects the key that records are sealed with. It lies beside the workspace; whoever has it can"
                    + " seal. A pass phrase is typed at a terminal or read from a file, never an argument.",
            "Exit codes: 0 done, 1 fault (also a wrong pass phrase), 2 wrong usage."
        },
        header = {"Examples:", "  settlemark key show --public-out mine.pem", "  settlemark key protect", ""},
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark key (show | new | protect | unprotect) [OPTIONS]",
        mixinStandardHelpOptions = true)
final class KeyCommand implements Runnable {
    private final Program program;

    @Spec
    @Nullable
    CommandSpec spec;

    private KeyCommand(Program program) {
        this.program = program;
    }

    static CommandLine line(Program program) {
        return new CommandLine(new KeyCommand(program));
    }

    @Override
    public void run() {
        throw new ParameterException(
                Commands.spec(spec).commandLine(),
                "key needs a command: key show, key new, key protect or key unprotect");
    }

    @Command(
            name = "show",
            description = "Shows the fingerprint and the public half, for whoever checks seals.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int show(
            @Mixin Where where,
            @Option(
                            names = "--public-out",
                            paramLabel = "FILE",
                            description = "Write the public half into a new file instead of printing it.")
                    @Nullable
                    Path publicOut)
            throws Exception {
        if (publicOut != null) {
            Commands.checkNew(Commands.spec(spec), "--public-out", publicOut);
        }
        return run(SessionDesk.KeyAct.SHOW, where, publicOut, null, null);
    }

    @Command(
            name = "new",
            description = "Makes a key where there is none; one that is there is never overwritten.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int make(
            @Mixin Where where,
            @Option(
                            names = "--new-phrase-file",
                            paramLabel = "FILE",
                            description = "Protect it with the pass phrase in the first line.")
                    @Nullable
                    Path anew)
            throws Exception {
        return run(SessionDesk.KeyAct.NEW, where, null, null, anew);
    }

    @Command(
            name = "protect",
            description = "Gives the key a pass phrase, or another one.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int protect(
            @Mixin Where where,
            @Option(names = "--phrase-file", paramLabel = "FILE", description = "The one that it has.") @Nullable
                    Path former,
            @Option(names = "--new-phrase-file", paramLabel = "FILE", description = "The new one, in the first line.")
                    @Nullable
                    Path anew)
            throws Exception {
        return run(SessionDesk.KeyAct.PROTECT, where, null, former, anew);
    }

    @Command(
            name = "unprotect",
            description = "Takes the key's pass phrase away.",
            synopsisHeading = "Usage: ",
            mixinStandardHelpOptions = true)
    int unprotect(
            @Mixin Where where,
            @Option(names = "--phrase-file", paramLabel = "FILE", description = "The one that it has.") @Nullable
                    Path former)
            throws Exception {
        return run(SessionDesk.KeyAct.UNPROTECT, where, null, former, null);
    }

    /** Which key. */
    static final class Where {
        @Mixin
        WorkspaceOption workspace = new WorkspaceOption();

        @Option(names = "--file", paramLabel = "FILE", description = "Another key than the workspace's.")
        @Nullable
        Path file;
    }

    private int run(
            SessionDesk.KeyAct act, Where where, @Nullable Path publicOut, @Nullable Path former, @Nullable Path anew)
            throws StoreException, IOException {
        CommandLine line = Commands.spec(spec).commandLine();
        return program.sessions()
                .key(
                        new SessionDesk.Key(
                                act,
                                Optional.ofNullable(where.file),
                                where.workspace.file(),
                                Optional.ofNullable(publicOut),
                                Optional.ofNullable(former),
                                Optional.ofNullable(anew)),
                        line.getOut(),
                        line.getErr());
    }
}
