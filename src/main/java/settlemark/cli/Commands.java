package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
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
    /** In the order of the help. */
    private static final List<String> NAMES = List.of(
            "demo",
            "desktop",
            "log",
            "probes",
            "capture",
            "decode",
            "rig",
            "profile",
            "settle",
            "whatif",
            "settings",
            "calc",
            "job",
            "instruments",
            "replay",
            "record",
            "reread",
            "verify",
            "review",
            "key",
            "session",
            "export",
            "import",
            "store");

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
        for (String name : asked(arguments)) {
            line.addSubcommand(command(name, program));
        }
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
    private static List<String> asked(String... arguments) {
        for (String argument : arguments) {
            if (NAMES.contains(argument)) {
                return List.of(argument);
            }
            if (!argument.equals("-v") && !argument.equals("--verbose")) {
                break;
            }
        }
        return NAMES;
    }

    private static Object command(String name, Program program) {
        return switch (name) {
            case "demo" -> new DemoCommand(program);
            case "desktop" -> new DesktopCommand(program);
            case "log" -> new LogCommand(program);
            case "probes" -> new ProbesCommand(program, System.in);
            case "capture" -> new CaptureCommand(program);
            case "decode" -> new DecodeCommand(program);
            case "rig" -> new RigCommand(program);
            case "profile" -> ProfileCommand.line(program, System.in);
            case "settle" -> new SettleCommand();
            case "whatif" -> new WhatIfCommand(program);
            case "settings" -> new SettingsCommand(program);
            case "calc" -> new CalcCommand();
            case "job" -> JobCommand.line(program, System.in);
            case "instruments" -> InstrumentsCommand.line(program);
            case "replay" -> new ReplayCommand(program);
            case "record" -> new RecordCommand(program);
            case "reread" -> new RereadCommand(program);
            case "verify" -> new VerifyCommand(program);
            case "review" -> new ReviewCommand(program);
            case "key" -> KeyCommand.line(program);
            case "session" -> SessionCommand.line(program);
            case "export" -> new ExportCommand(program);
            case "import" -> new ImportCommand(program);
            case "store" -> StoreCommand.line(program);
            default -> throw new IllegalArgumentException("no command " + name);
        };
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
