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
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import settlemark.measure.Unit;
import settlemark.settle.SettleDetector;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

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
            ""
        },
        description = {
            "Decides when a recorded reading has settled, from the past alone.",
            "FILE is CSV with the header t_s,value (seconds; inches of water or degrees Fahrenheit, or see --unit)."
                    + " An empty value is a moment without a reading."
        },
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {
            " 0:done, whatever the traces do",
            " 1:a file could not be read to its end",
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
            required = true,
            paramLabel = "gas|air|stack",
            converter = KindConverter.class,
            description = "What was measured: gas pressure, air temperature or stack temperature.")
    private SettleKind kind = SettleKind.GAS;

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
        SettleSettings settings = settings();
        List<String> sources = files.isEmpty() ? List.of(STANDARD_INPUT) : files;
        sources.forEach(this::requireFile);
        SettleEventTable table = new SettleEventTable(spec.commandLine().getOut(), settings.driftLimit());
        try {
            table.header();
            int exitCode = DONE;
            for (String source : sources) {
                exitCode = Math.max(exitCode, watch(source, settings, table));
            }
            return exitCode;
        } catch (OutputLostException e) {
            complain(OutputLostException.WORDS);
            return FAULT;
        }
    }

    private int watch(String source, SettleSettings settings, SettleEventTable table) {
        SettleDetector detector = new SettleDetector(settings, resolution, event -> table.row(source, event));
        try (Reader reader = new InputStreamReader(open(source), StandardCharsets.UTF_8)) {
            new TraceReader(source).read(reader, detector::accept);
            return DONE;
        } catch (MalformedTraceException e) {
            complain(e.message());
            return MALFORMED;
        } catch (IOException e) {
            complain(source + ": could not be read to its end: " + e + " (check that you may read it)");
            return FAULT;
        } finally {
            if (detector.ignoredSamples() > 0) {
                complain(source + ": " + detector.ignoredSamples()
                        + " samples ignored, their time was not later than the one before");
            }
        }
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

    private SettleSettings settings() {
        SettleSettings defaults = SettleSettings.defaults(kind);
        if (unit.isEmpty()) {
            return defaults;
        }
        Unit from = kind == SettleKind.GAS ? Unit.INCH_OF_WATER : Unit.FAHRENHEIT;
        Unit to = Unit.find(unit)
                .orElseThrow(() ->
                        wrongUsage("--unit must be a UCUM code such as " + examples(from) + ", got \"" + unit + "\""));
        if (to.dimension() != from.dimension()) {
            throw wrongUsage(
                    "--unit must be a unit of " + from.dimension().name().toLowerCase(Locale.ROOT) + " such as "
                            + examples(from) + ", got \"" + unit + "\"");
        }
        return defaults.scaled(Math.abs(from.to(to).slope()));
    }

    private static String examples(Unit from) {
        return from.equals(Unit.INCH_OF_WATER) ? "Pa, mbar or [in_i'H2O]" : "Cel, K or [degF]";
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
