package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.job.InstrumentCard;
import settlemark.session.StoreException;

/** {@code instruments import}. */
@Command(
        name = "import",
        description = {
            "Takes instruments in from a CSV file, all or none. The header names the columns serial, name, kind,"
                    + " calibrated, due, channel, true, indicated, uncertainty and unit, in any order; serial alone must be"
                    + " there. A line is an instrument or one of its correction points: name, kind and days stand in the"
                    + " first line of an instrument, and may stand in its others too.",
            "Exit codes: 0 done, 1 the workspace cannot be written, 2 wrong usage or an instrument that is there already, 5"
                    + " a line that cannot be understood."
        },
        header = {"Example:", "  settlemark instruments import certificate.csv", ""},
        synopsisHeading = "Usage: ",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ImportInstrumentsCommand implements Callable<Integer> {
    private static final long MOST_BYTES = 4 << 20;

    private final Program program;

    @Parameters(paramLabel = "FILE", description = "A CSV file in UTF-8.")
    @SuppressWarnings("NullAway.Init")
    Path file;

    @Option(names = "--replace", description = "In the place of those that are there; how they were last used stays.")
    boolean replace;

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Spec
    @Nullable
    CommandSpec spec;

    ImportInstrumentsCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws StoreException, IOException {
        CommandSpec own = Commands.spec(spec);
        PrintWriter err = own.commandLine().getErr();
        Commands.checkFile(own, file);
        List<InstrumentCard> cards;
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new IllegalArgumentException(file + ": it is larger than 4 MiB; is it the right file?");
            }
            cards = InstrumentLines.read(file.toString(), Files.readString(file));
        } catch (CharacterCodingException e) {
            err.println("settlemark: " + file + ": it is not text in UTF-8; save it as CSV in UTF-8");
            return Program.DAMAGED;
        } catch (IllegalArgumentException e) {
            err.println("settlemark: " + e.getMessage());
            return Program.DAMAGED;
        }
        refuseThere(own, cards);
        program.instruments().put(workspace.file(), cards);
        own.commandLine()
                .getOut()
                .println(cards.size()
                        + (cards.size() == 1 ? " instrument: " : " instruments: ")
                        + cards.stream().map(InstrumentCard::serial).collect(Collectors.joining(", ")));
        return Program.DONE;
    }

    private void refuseThere(CommandSpec own, List<InstrumentCard> cards) throws StoreException {
        Set<String> there = program.instruments().serials(workspace.file());
        List<String> twice = cards.stream()
                .map(InstrumentCard::serial)
                .filter(there::contains)
                .toList();
        if (!replace && !twice.isEmpty()) {
            throw new ParameterException(
                    own.commandLine(),
                    "there already: " + String.join(", ", twice) + "; --replace puts the file's in their place");
        }
    }
}
