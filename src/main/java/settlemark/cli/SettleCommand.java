package settlemark.cli;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import settlemark.chart.SettlePicture;
import settlemark.job.SettleForm;
import settlemark.job.SettledBy;
import settlemark.settle.SettleCheck;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;

/**
 * {@code settle}: says of any recorded trace when its reading had settled, and why.
 *
 * <p>Events go to the command line's output as CSV, each as it happens; messages to its error output. Exit code 0 whatever
 * the traces do, 1 where a file cannot be read to its end, 2 for wrong usage, 5 for malformed data. A file that is wrong
 * does not stop the ones after it.
 */
@Command(
        name = "settle",
        header = {
            "Examples:",
            "  settlemark settle --kind gas manifold.csv",
            "  settlemark settle --kind air --resolution 0.1 supply.csv return.csv",
            "  settlemark settle --time t_s --value manifold:gas --value supply:air:Cel --plot visit.png visit.csv",
            ""
        },
        description = {
            "Decides when a recorded reading has settled, from the past alone.",
            "FILE is CSV with the header t_s,value (seconds; inches of water or degrees Fahrenheit, or see --unit)."
                    + " An empty value is a moment without a reading.",
            "With --value the file has several channels: each is judged, and \"all\" says when all are settled at the same"
                    + " time (ready) and when one of them no longer is (spoiled). An empty cell is then no sample of that"
                    + " channel."
        },
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {
            " 0:done, whatever the traces do",
            " 1:a file could not be read to its end, or a picture not be written",
            " 2:wrong usage",
            " 5:malformed data"
        },
        mixinStandardHelpOptions = true,
        sortOptions = false)
public final class SettleCommand implements Callable<Integer> {
    private static final int DONE = 0;
    private static final int FAULT = 1;
    private static final int MALFORMED = 5;
    private static final String STANDARD_INPUT = "-";

    @Option(
            names = "--kind",
            paramLabel = "gas|air|stack",
            converter = KindConverter.class,
            description = "What was measured: gas pressure, air temperature or stack temperature.")
    @Nullable
    private SettleKind kind;

    @Option(
            names = "--resolution",
            paramLabel = "Q",
            description =
                    "Step in which the probe counts, in the unit of the values; estimated from the past when absent.")
    private double resolution = Double.NaN;

    @Option(
            names = "--unit",
            paramLabel = "UCUM",
            description =
                    "Unit of the values by its UCUM code, such as Pa, mbar or Cel; the limits are converted to it.")
    private String unit = "";

    @Option(names = "--time", paramLabel = "COLUMN", description = "Column of the times, in seconds; t_s when absent.")
    private String time = TraceReader.TIME;

    @Option(
            names = "--value",
            paramLabel = "COLUMN:KIND[:UCUM]",
            description =
                    "A column and what was measured in it, instead of --kind; may be said again. The unit is inches of"
                            + " water or degrees Fahrenheit where no UCUM code is given.")
    private List<String> values = new ArrayList<>();

    @Mixin
    private SettingOptions settings = new SettingOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Option(names = "--explain", description = "Print the state at every bin instead of the changes of mind.")
    private boolean explain;

    @Option(
            names = "--plot",
            paramLabel = "FILE.png",
            description = "Draw the trace with its settled spans, limits and reasons into a new file.")
    @Nullable
    private Path plot;

    @Parameters(paramLabel = "FILE", description = "Traces; standard input where there is none, or for -.")
    private List<String> files = new ArrayList<>();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private final InputStream standardInput;

    public SettleCommand() {
        this(System.in);
    }

    SettleCommand(InputStream standardInput) {
        this.standardInput = standardInput;
    }

    @Override
    public Integer call() {
        if (resolution < 0 || Double.isInfinite(resolution)) {
            throw wrongUsage("--resolution must be positive, or 0 where nothing is rounded, got " + resolution);
        }
        List<ChannelColumn> columns = columns();
        SettleChoices choices = settings.choices(spec);
        checkFit(columns, choices);
        SettledBy by = rules.settledBy(spec);
        checkRule(columns, by);
        List<String> sources = files.isEmpty() ? List.of(STANDARD_INPUT) : files;
        sources.forEach(this::requireFile);
        checkPlot(columns, sources);
        SettleTable table = new SettleTable(spec.commandLine().getOut(), !values.isEmpty(), explain);
        try {
            table.header();
            int exitCode = DONE;
            for (String source : sources) {
                TraceRun run = new TraceRun(
                        source, columns, choices, by, resolution, values.isEmpty(), table, explain, plot != null);
                exitCode = Math.max(exitCode, watch(source, columns, run));
            }
            return exitCode;
        } catch (OutputLostException e) {
            complain(OutputLostException.WORDS);
            return FAULT;
        }
    }

    private List<ChannelColumn> columns() {
        SettleKind only = kind;
        if ((only == null) == values.isEmpty()) {
            throw wrongUsage(
                    only == null
                            ? "Missing required option: '--kind=gas|air|stack', or --value COLUMN:KIND for a file with"
                                    + " several channels"
                            : "--kind is for a file with one value, --value for one with several; say one of them");
        }
        try {
            if (only != null) {
                Optional<String> code = unit.isEmpty() ? Optional.empty() : Optional.of(unit);
                return List.of(ChannelColumn.of("--unit", TraceReader.VALUE, only, code));
            }
            if (!unit.isEmpty() || !Double.isNaN(resolution)) {
                throw wrongUsage("--unit and --resolution go with --kind; of --value the unit is said as"
                        + " COLUMN:KIND:UCUM, and the resolution is estimated");
            }
            List<ChannelColumn> columns =
                    values.stream().map(ChannelColumn::written).toList();
            if (columns.stream().map(ChannelColumn::column).distinct().count() < columns.size()) {
                throw wrongUsage("--value names a column twice, got " + values);
            }
            return columns;
        } catch (IllegalArgumentException e) {
            throw wrongUsage(String.valueOf(e.getMessage()));
        }
    }

    /** What is set must fit the step in which the probe counts, where that is given. */
    private void checkFit(List<ChannelColumn> columns, SettleChoices choices) {
        for (ChannelColumn column : columns) {
            if (choices.adjustments().containsKey(column.kind())) {
                List<String> problems = SettleCheck.problems(
                        column.kind(),
                        choices.of(column.kind()),
                        column.factor(),
                        column.unit().symbol(),
                        resolution,
                        Double.NaN);
                if (!problems.isEmpty()) {
                    throw wrongUsage(String.join(System.lineSeparator(), problems));
                }
            }
        }
        for (SettleKind set : choices.adjustments().keySet()) {
            if (columns.stream().noneMatch(c -> c.kind() == set)) {
                throw wrongUsage("--set " + SettleForm.word(set) + " is of no column here; the columns are "
                        + columns.stream()
                                .map(c -> c.column() + ":" + SettleForm.word(c.kind()))
                                .toList());
            }
        }
    }

    private void checkRule(List<ChannelColumn> columns, SettledBy by) {
        by.rule().ifPresent(rule -> {
            if (columns.stream().noneMatch(c -> c.unit().dimension() == rule.dimension())) {
                throw wrongUsage("--rule " + rule.key() + " is about a "
                        + rule.dimension().name().toLowerCase(Locale.ROOT) + ", and no column is one; it says: "
                        + rule.words() + " (" + rule.source() + ")");
            }
        });
    }

    private void checkPlot(List<ChannelColumn> columns, List<String> sources) {
        Path file = plot;
        if (file == null) {
            return;
        }
        if (sources.size() > 1) {
            throw wrongUsage("--plot draws one file, got " + sources.size() + "; run it once for each");
        }
        Path name = file.getFileName();
        if (name == null || !name.toString().endsWith(".png")) {
            throw wrongUsage("--plot writes PNG, got " + file + "; give it a name that ends in .png");
        }
        if (columns.stream().map(ChannelColumn::unit).distinct().count() > SettlePicture.MOST_UNITS
                || columns.size() > SettlePicture.MOST_CHANNELS) {
            throw wrongUsage("--plot has room for " + SettlePicture.MOST_UNITS + " units and "
                    + SettlePicture.MOST_CHANNELS + " channels; name fewer columns");
        }
        Commands.checkNew(spec, "--plot", file);
    }

    private int watch(String source, List<ChannelColumn> columns, TraceRun run) {
        List<String> names = columns.stream().map(ChannelColumn::column).toList();
        try (Reader reader = new InputStreamReader(open(source), StandardCharsets.UTF_8)) {
            new TraceReader(source, time, names).read(reader, run::row);
            return draw(source, run);
        } catch (MalformedTraceException e) {
            complain(e.message());
            return MALFORMED;
        } catch (IOException e) {
            complain(source + ": could not be read to its end: " + e + " (check that you may read it)");
            return FAULT;
        } finally {
            if (run.ignoredSamples() > 0) {
                complain(source + ": " + run.ignoredSamples()
                        + " samples ignored, their time was not later than the one before");
            }
        }
    }

    private int draw(String source, TraceRun run) {
        Path file = plot;
        if (file != null) {
            try {
                SettlePlot.write(file, source, run);
            } catch (IOException e) {
                complain("--plot: " + file + " could not be written: " + e.getMessage());
                return FAULT;
            }
        }
        return DONE;
    }

    private InputStream open(String source) throws IOException {
        return source.equals(STANDARD_INPUT)
                ? standardInput
                : new BufferedInputStream(Files.newInputStream(Path.of(source)));
    }

    private void requireFile(String source) {
        if (source.equals(STANDARD_INPUT)) {
            return;
        }
        try {
            Path path = Path.of(source);
            if (!Files.exists(path)) {
                throw wrongUsage(source + ": no such file (check the path)");
            }
            if (Files.isDirectory(path)) {
                throw wrongUsage(source + ": is a directory, expected a CSV file");
            }
        } catch (InvalidPathException e) {
            throw wrongUsage(source + ": is not a path: " + e.getReason());
        }
    }

    private void complain(String message) {
        spec.commandLine().getErr().println(message);
        spec.commandLine().getErr().flush();
    }

    private ParameterException wrongUsage(String message) {
        return new ParameterException(spec.commandLine(), message);
    }

    static final class KindConverter implements ITypeConverter<SettleKind> {
        @Override
        public SettleKind convert(String text) {
            return switch (text) {
                case "gas" -> SettleKind.GAS;
                case "air" -> SettleKind.AIR;
                case "stack" -> SettleKind.STACK;
                default -> throw new TypeConversionException("must be gas, air or stack, got \"" + text + "\"");
            };
        }
    }
}
