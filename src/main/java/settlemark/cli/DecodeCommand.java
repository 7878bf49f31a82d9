package settlemark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.profile.ByteText;
import settlemark.profile.Profile;
import settlemark.session.CaptureReading;

/** {@code settlemark decode}: a capture through any profile again. */
@Command(
        name = "decode",
        description = {
            "Sends the bytes of a capture through a profile again and prints the samples as CSV. The same bytes give the"
                    + " same text.",
            "What is rejected or damaged is told on standard error, and the rest is read."
        },
        header = {
            "Examples:",
            "  settlemark decode gauge.capture > gauge.csv",
            "  settlemark decode two.capture --profile gauge=my-gauge.yaml --json",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark decode FILE [--profile NAME=PROFILE] [OPTIONS]",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {
            " 0:done, whatever was rejected; also where the capture only ends early",
            " 1:the output cannot be written",
            " 2:wrong usage, or no profile for a probe",
            " 3:a profile has a problem",
            " 5:the capture is damaged"
        },
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class DecodeCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "FILE", description = "A capture, see \"settlemark capture\".")
    Path file = Path.of("");

    @Option(
            names = "--profile",
            paramLabel = "NAME=PROFILE",
            description =
                    "A profile file, or the id of a profile that comes with the program, for the probe of that name."
                            + " Without it the probe keeps the profile that it was captured with.")
    Map<String, String> profiles = new LinkedHashMap<>();

    @Option(
            names = "--key-file",
            paramLabel = "NAME=FILE",
            description = "The key of a probe with protected frames, 32 hexadecimal digits in a file.")
    Map<String, Path> keyFiles = new LinkedHashMap<>();

    @Option(
            names = "--address",
            paramLabel = "NAME=ADDRESS",
            description = "The address of a probe with protected frames, where the capture does not say it.")
    Map<String, String> addresses = new LinkedHashMap<>();

    @Option(
            names = "--rejections",
            paramLabel = "N",
            defaultValue = "20",
            description = "Tell so many rejections of each probe one by one (${DEFAULT-VALUE}).")
    long rejections;

    @Option(names = "--json", description = "A JSON object a line instead of CSV.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    DecodeCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Commands.checkFile(own, file);
        Optional<Map<String, Profile>> chosen = chosen(own);
        if (chosen.isEmpty()) {
            return Program.CHECK_FAILED;
        }
        SampleTable table = SampleTable.of(own.commandLine().getOut(), json);
        CaptureReplay replay = new CaptureReplay(
                own,
                file.toString(),
                new CaptureReplay.Choices(chosen.get(), keys(own), addresses(own)),
                table,
                rejections);
        CaptureReading reading;
        try {
            reading = program.readCapture(file, replay);
            replay.finish();
            table.flush();
        } catch (OutputLostException e) {
            own.commandLine().getErr().println("settlemark: " + OutputLostException.WORDS);
            return Program.FAULT;
        }
        replay.summary();
        if (reading.damaged()) {
            own.commandLine().getErr().println(file + ": " + reading.damagedLines() + " damaged lines");
            return Program.DAMAGED;
        }
        return Program.DONE;
    }

    private Map<String, ByteText> keys(CommandSpec own) throws IOException {
        Map<String, ByteText> keys = new LinkedHashMap<>();
        for (Map.Entry<String, Path> entry : keyFiles.entrySet()) {
            keys.put(entry.getKey(), SecretFile.key(own, entry.getValue()));
        }
        return keys;
    }

    private Map<String, ByteText> addresses(CommandSpec own) {
        Map<String, ByteText> found = new LinkedHashMap<>();
        addresses.forEach((name, address) -> found.put(name, SecretFile.address(own, address)));
        return found;
    }

    private Optional<Map<String, Profile>> chosen(CommandSpec own) throws IOException {
        Map<String, Profile> found = new LinkedHashMap<>();
        for (Map.Entry<String, String> entry : profiles.entrySet()) {
            Optional<Profile> profile =
                    NamedProfile.find(own, entry.getValue(), "say --profile " + entry.getKey() + "=FILE");
            if (profile.isEmpty()) {
                return Optional.empty();
            }
            found.put(entry.getKey(), profile.get());
        }
        if (rejections < 0) {
            throw new ParameterException(own.commandLine(), "--rejections must be 0 or more, got " + rejections);
        }
        return Optional.of(found);
    }
}
