package settlemark.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import settlemark.profile.Profile;

/** {@code settlemark rig}: the simulated instruments on real serial devices. */
@Command(
        name = "rig",
        description = {
            "The simulated furnace's instruments speak into serial devices, as real ones would; with --profile, so does a"
                    + " device of any profile, answering what it is asked.",
            "Prints how much each has said when it ends. The furnace stands on low fire. All of it is simulated, whatever"
                    + " the profile says."
        },
        header = {
            "Examples:",
            "  settlemark rig --tty gauge=/dev/pts/4 --tty air=/dev/pts/6",
            "  settlemark rig --tty gauge=/dev/ttyUSB1 --seconds 300 --no-drop-outs",
            "  settlemark rig --tty meter=/dev/pts/4@17 --profile meter=modbus-registers",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark rig --tty INSTRUMENT=DEVICE [--profile INSTRUMENT=PROFILE] [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class RigCommand implements Callable<Integer> {
    private final Program program;

    @Option(
            names = "--tty",
            paramLabel = "INSTRUMENT=DEVICE",
            required = true,
            description =
                    "gauge or air, or a name of your choice with a --profile, and the serial device that it speaks"
                            + " into; @N behind it for a Modbus unit.")
    Map<String, String> ttys = new LinkedHashMap<>();

    @Option(
            names = "--profile",
            paramLabel = "INSTRUMENT=PROFILE",
            description = "A profile file, or the id of a profile that comes with the program.")
    Map<String, String> profiles = new LinkedHashMap<>();

    @Option(names = "--seconds", paramLabel = "S", description = "End after so many seconds.")
    @Nullable
    Double seconds;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of the simulated instruments.")
    long seed;

    @Option(names = "--no-drop-outs", description = "Lose no frame on the way.")
    boolean noDropOuts;

    @Spec
    @Nullable
    CommandSpec spec;

    RigCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        List<Program.Tty> devices = new ArrayList<>();
        for (Map.Entry<String, String> tty : ttys.entrySet()) {
            Optional<Profile> profile = Optional.empty();
            String named = profiles.get(tty.getKey());
            if (named != null) {
                profile = NamedProfile.find(own, named, "say --profile " + tty.getKey() + "=FILE");
                if (profile.isEmpty()) {
                    return Program.CHECK_FAILED;
                }
            }
            devices.add(new Program.Tty(tty.getKey(), tty.getValue(), profile));
        }
        return program.rig(
                new Program.Rig(devices, Commands.seconds(own, seconds), seed, !noDropOuts),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
