package settlemark.cli;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** How a job by typing is done, begun or gone on with: on the rig or not, how long to wait, where things go. */
final class JobOptions {
    private static final double MOST_MINUTES = 1440;

    @Option(names = "--rig", description = "On the simulated furnace, which begins cold; everything says SIMULATED.")
    boolean rig;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of the rig's instruments.")
    long seed;

    @Option(names = "--fault", paramLabel = "FAULT", description = "Something that is wrong with the rig, as in demo.")
    List<String> faults = new ArrayList<>();

    @Option(
            names = "--patience",
            paramLabel = "MINUTES",
            defaultValue = "20",
            description = "How long a reading may take to settle before you are asked what to do.")
    double patienceMinutes;

    @Option(
            names = "--instrument",
            paramLabel = "PROBE=SERIAL",
            description =
                    "Which instrument a probe is, by its serial number in \"settlemark instruments list\"; a probe"
                            + " that tells its own needs none.")
    List<String> instruments = new ArrayList<>();

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--out", paramLabel = "FOLDER", description = "Where the record goes.")
    @Nullable
    Path folder;

    /** @throws ParameterException where a value makes no sense */
    void check(CommandSpec own) {
        if (!(patienceMinutes > 0 && patienceMinutes <= MOST_MINUTES)) {
            throw new ParameterException(
                    own.commandLine(), "--patience must be above 0 and at most 1440 minutes, got " + patienceMinutes);
        }
        if (!rig && !faults.isEmpty()) {
            throw new ParameterException(own.commandLine(), "--fault is for --rig only");
        }
    }

    /** Empty where no rig was asked for. */
    Optional<Program.Bench> bench() {
        return rig ? Optional.of(new Program.Bench(seed, faults)) : Optional.empty();
    }

    /** @throws ParameterException where one is no pair, or a probe is named twice */
    Map<String, String> instruments(CommandSpec own) {
        Map<String, String> named = new LinkedHashMap<>();
        for (String pair : instruments) {
            int equals = pair.indexOf('=');
            if (equals < 1 || pair.substring(equals + 1).isBlank()) {
                throw new ParameterException(
                        own.commandLine(), "--instrument must be PROBE=SERIAL, got \"" + pair + "\"");
            }
            if (named.put(pair.substring(0, equals), pair.substring(equals + 1).strip()) != null) {
                throw new ParameterException(
                        own.commandLine(), "--instrument names probe " + pair.substring(0, equals) + " twice");
            }
        }
        return named;
    }

    Optional<Path> folder() {
        return Optional.ofNullable(folder);
    }

    JobTalk talk(Program program, CommandSpec own, InputStream in) {
        boolean terminal = in == System.in && System.console() != null;
        return new JobTalk(
                TypedLines.of(in, terminal, program), own.commandLine().getErr(), patienceMinutes * 60);
    }
}
