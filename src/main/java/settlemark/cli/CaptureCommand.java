package settlemark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.session.CaptureHeader;

/** {@code settlemark capture}: raw bytes with their times into a file. */
@Command(
        name = "capture",
        description = {
            "Writes the raw bytes of probes with their times into a text file, until it is interrupted.",
            "What came until a second ago survives a killed process. \"settlemark decode\" reads the file through any"
                    + " profile."
        },
        header = {
            "Examples:",
            "  settlemark capture --probe meter=/dev/ttyUSB0 --profile meter=my-meter.yaml --out meter.capture",
            "  settlemark capture --probe gauge=/dev/pts/3 --profile gauge=demo-gauge --out g.capture --seconds 20",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark capture --probe NAME=ADDRESS [--profile NAME=PROFILE] --out FILE [--seconds S]",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {
            " 0:done",
            " 1:the file cannot be written",
            " 2:wrong usage",
            " 3:a profile has a problem",
            " 4:no such probe or port"
        },
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class CaptureCommand implements Callable<Integer> {
    private final Program program;

    @Mixin
    ProbeOptions options = new ProbeOptions();

    @Option(
            names = "--out",
            paramLabel = "FILE",
            required = true,
            description = "The new file. One that is there already is never overwritten.")
    Path file = Path.of("");

    @Option(names = "--seconds", paramLabel = "S", description = "End after so many seconds.")
    @Nullable
    Double seconds;

    @Spec
    @Nullable
    CommandSpec spec;

    CaptureCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        OptionalDouble limit = Commands.seconds(own, seconds);
        for (String name : options.names()) {
            if (!CaptureHeader.Probe.isName(name)) {
                throw new ParameterException(
                        own.commandLine(),
                        "a probe's name in a capture is " + CaptureHeader.NAME_WORDS + "; got \"" + name + "\"");
            }
        }
        Commands.checkNew(own, "--out", file);
        Optional<List<ProbeOptions.Chosen>> chosen = options.choose(own);
        if (chosen.isEmpty()) {
            return Program.CHECK_FAILED;
        }
        List<Program.Probe> probes = chosen.get().stream()
                .map(probe -> new Program.Probe(probe.name(), probe.port(), probe.profile(), List.of()))
                .toList();
        return program.capture(
                new Program.Capture(probes, file, limit),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
