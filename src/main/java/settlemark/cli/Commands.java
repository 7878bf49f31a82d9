package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import settlemark.session.LinkException;
import settlemark.session.StoreException;

/** All commands, and how their failures become messages and exit codes. */
@Command(
        name = "settlemark",
        description = "Streams any gauge, decides when a stage reading has settled, and hands over a record.",
        header = {
            "Examples:",
            "  settlemark                                  the window; without a display the demo, headless",
            "  settlemark settle --kind gas readings.csv   when had these readings settled?",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark [-v] COMMAND",
        mixinStandardHelpOptions = true,
        version = "Settlemark " + Program.VERSION)
public final class Commands {
    private static final Map<String, Function<Program, Object>> BY_NAME = byName();

    @Option(
            names = {"-v", "--verbose"},
            scope = CommandLine.ScopeType.INHERIT,
            description = "Where something fails, say where in the program.")
    boolean verbose;

    private Commands() {}

    /**
     * Runs one command line.
     *
     * @param out data; an error in writing it must show in {@code checkError}
     * @param err messages
     * @return the exit code
     */
    public static int run(Program program, PrintWriter out, PrintWriter err, String... arguments) {
        Commands all = new Commands();
        CommandLine line = new CommandLine(all);
        asked(arguments).forEach(made -> line.addSubcommand(made.apply(program)));
        CommandList.in(line);
        line.setOut(out);
        line.setErr(err);
        line.setUsageHelpAutoWidth(true);
        line.setParameterExceptionHandler(DocumentMistakes.before(line.getParameterExceptionHandler()));
        line.setExecutionExceptionHandler((failure, command, parsed) -> failed(failure, err, all.verbose));
        line.setExecutionStrategy(parsed -> {
            program.quiet(!all.verbose);
            return new CommandLine.RunLast().execute(parsed);
        });
        int code = line.execute(arguments);
        out.flush();
        err.flush();
        return code;
    }

    /**
     * The one command that the line begins with, or all where it begins with none: to read the options of all out of their
     * classes takes as long as a short command itself.
     */
    private static Collection<Function<Program, Object>> asked(String... arguments) {
        for (String argument : arguments) {
            Function<Program, Object> made = BY_NAME.get(argument);
            if (made != null) {
                return List.of(made);
            }
            if (!argument.equals("-v") && !argument.equals("--verbose")) {
                break;
            }
        }
        return BY_NAME.values();
    }

    /** In the order of the help. */
    private static Map<String, Function<Program, Object>> byName() {
        Map<String, Function<Program, Object>> all = new LinkedHashMap<>();
        all.put("demo", DemoCommand::new);
        all.put("desktop", DesktopCommand::new);
        all.put("log", LogCommand::new);
        all.put("probes", program -> new ProbesCommand(program, System.in));
        all.put("capture", CaptureCommand::new);
        all.put("decode", DecodeCommand::new);
        all.put("rig", RigCommand::new);
        all.put("profile", program -> ProfileCommand.line(program, System.in));
        all.put("settle", program -> new SettleCommand());
        all.put("whatif", WhatIfCommand::new);
        all.put("settings", SettingsCommand::new);
        all.put("calc", program -> new CalcCommand());
        all.put("job", program -> JobCommand.line(program, System.in));
        all.put("instruments", InstrumentsCommand::line);
        all.put("replay", ReplayCommand::new);
        all.put("record", RecordCommand::new);
        all.put("reread", RereadCommand::new);
        all.put("verify", VerifyCommand::new);
        all.put("review", ReviewCommand::new);
        all.put("key", KeyCommand::line);
        all.put("session", SessionCommand::line);
        all.put("export", ExportCommand::new);
        all.put("import", ImportCommand::new);
        all.put("store", StoreCommand::line);
        return Collections.unmodifiableMap(all);
    }

    private static int failed(Exception failure, PrintWriter err, boolean verbose) {
        err.println("settlemark: " + message(failure));
        if (verbose) {
            failure.printStackTrace(err);
        }
        if (failure instanceof LinkException) {
            return Program.NO_PROBE;
        }
        if (failure instanceof StoreException store) {
            return store.kind() == StoreException.Cause.DAMAGED ? Program.DAMAGED : Program.FAULT;
        }
        return Program.FAULT;
    }

    private static String message(Exception failure) {
        String said = failure.getMessage();
        if (failure instanceof IOException || failure instanceof LinkException || failure instanceof StoreException) {
            return said == null ? failure.getClass().getSimpleName() : said;
        }
        return "a fault of the program: " + failure + " (run again with -v for where)";
    }

    static CommandSpec spec(@Nullable CommandSpec spec) {
        if (spec == null) {
            throw new IllegalStateException("a command runs through picocli");
        }
        return spec;
    }

    /** A file that is to be read. */
    static void checkFile(CommandSpec spec, Path file) {
        if (Files.isDirectory(file)) {
            throw new ParameterException(spec.commandLine(), file + " is a folder; name a file in it");
        }
        if (!Files.exists(file)) {
            throw new ParameterException(spec.commandLine(), file + ": no such file");
        }
    }

    /** A file that is to be made. */
    static void checkNew(CommandSpec spec, String option, Path file) {
        if (Files.exists(file)) {
            throw new ParameterException(
                    spec.commandLine(),
                    option + ": " + file + " is there already and is not overwritten; choose another name");
        }
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null && !Files.isDirectory(folder)) {
            throw new ParameterException(
                    spec.commandLine(), option + ": there is no folder " + folder + "; make it first");
        }
    }

    static OptionalDouble seconds(CommandSpec spec, @Nullable Double seconds) {
        if (seconds == null) {
            return OptionalDouble.empty();
        }
        if (!(seconds > 0) || seconds > 1e8) {
            throw new ParameterException(spec.commandLine(), "--seconds must be above 0, got " + seconds);
        }
        return OptionalDouble.of(seconds);
    }
}
