package settlemark.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.session.RecordForm;

/** {@code settlemark record}: makes a job's record again. */
@Command(
        name = "record",
        description = {
            "Makes the record of a stored job, PDF, JSON and CSV, and seals it. The same session, paper and units give the"
                    + " same bytes. Paper and units are of the PDF; the other files keep the units of the job.",
            "With --pdf, --json, --csv or --parquet only those files are made, as copies without a seal; nothing that is there"
                    + " is overwritten.",
            "Exit codes: 0 done, 1 fault, 2 wrong usage, 3 something as left is outside its limit, 5 the workspace is"
                    + " damaged."
        },
        header = {
            "Examples:",
            "  settlemark record latest",
            "  settlemark record 12 --workspace w.settlemark --out records",
            "  settlemark record latest --paper letter --units us --remember",
            "  settlemark record latest --rereading 1",
            "  settlemark record latest --pdf visit.pdf --json visit.json",
            "  settlemark record latest --csv tables/",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark record [OPTIONS] SESSION",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class RecordCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
    String session = "";

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--out", paramLabel = "FOLDER", description = "Where the record goes.")
    @Nullable
    Path folder;

    @Option(
            names = "--rereading",
            paramLabel = "N",
            description = "From what \"settlemark reread\" has decoded again, instead of what was decoded on the day.")
    @Nullable
    Integer rereading;

    @Option(names = "--paper", paramLabel = "a4|letter", description = "Paper of the PDF; a4 where nothing is set.")
    @Nullable
    String paper;

    @Option(
            names = "--units",
            paramLabel = "us|si|job",
            description = "Units of the PDF: inH2O, degF and Btu/h; Pa, degC and kW; or those the job was done in.")
    @Nullable
    String units;

    @Option(names = "--remember", description = "Paper and units are from now on those of this workspace's records.")
    boolean remember;

    @Option(
            names = "--phrase-file",
            paramLabel = "FILE",
            description = "Pass phrase of a protected key for seals, in the first line; asked for at a terminal.")
    @Nullable
    Path phraseFile;

    @Option(names = "--pdf", paramLabel = "FILE", description = "Only the PDF, into a new file.")
    @Nullable
    Path pdf;

    @Option(names = "--json", paramLabel = "FILE", description = "Only the JSON, into a new file.")
    @Nullable
    Path json;

    @Option(
            names = "--csv",
            paramLabel = "FILE|FOLDER",
            description = "Only the readings, into a new file; into a folder that is there, readings and every sample.")
    @Nullable
    Path csv;

    @Option(
            names = "--parquet",
            paramLabel = "FILE|FOLDER",
            description = "The same as Parquet. Needs DuckDB on the class path, which does not come with the program.")
    @Nullable
    Path parquet;

    @Spec
    @Nullable
    CommandSpec spec;

    RecordCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        StoredDesk.Copies copies = new StoredDesk.Copies(
                Optional.ofNullable(pdf),
                Optional.ofNullable(json),
                Optional.ofNullable(csv),
                Optional.ofNullable(parquet));
        if (copies.any() && (folder != null || phraseFile != null)) {
            throw new ParameterException(
                    own.commandLine(),
                    (folder != null ? "--out" : "--phrase-file") + " is for the sealed record; single files say where"
                            + " they go themselves and have no seal: leave it out, or make the record without them");
        }
        OptionalInt number = rereading == null ? OptionalInt.empty() : OptionalInt.of(rereading);
        return program.stored()
                .record(
                        new StoredDesk.Record(
                                session,
                                workspace.file(),
                                Optional.ofNullable(folder),
                                number,
                                keyOptions.keys(own),
                                chosen(own, "--paper", paper, "a4 or letter", RecordForm::paper),
                                chosen(own, "--units", units, "us, si or job", RecordForm::units),
                                remember,
                                Optional.ofNullable(phraseFile),
                                copies),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }

    private static <T> Optional<T> chosen(
            CommandSpec own,
            String option,
            @Nullable String word,
            String expected,
            Function<String, Optional<T>> reading) {
        if (word == null) {
            return Optional.empty();
        }
        Optional<T> read = reading.apply(word);
        if (read.isEmpty()) {
            throw new ParameterException(own.commandLine(), option + " must be " + expected + ", got \"" + word + "\"");
        }
        return read;
    }
}
