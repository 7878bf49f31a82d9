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
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.profile.Profile;

/** {@code settlemark rig}: the simulated instruments on real serial devices and Bluetooth adapters. */
@Command(
        name = "rig",
        description = {
            "The simulated furnace's instruments speak into serial devices or as Bluetooth devices, as real ones would;"
                    + " with --profile, so does a device of any profile, answering what it is asked.",
            "Prints how much each has said when it ends. The furnace stands on low fire. All of it is simulated, whatever"
                    + " the profile says."
        },
        header = {
            "Examples:",
            "  settlemark rig --tty gauge=/dev/pts/4 --tty air=/dev/pts/6",
            "  settlemark rig --tty gauge=/dev/ttyUSB1 --seconds 300 --no-drop-outs",
            "  settlemark rig --tty meter=/dev/pts/4@17 --profile meter=modbus-registers",
            "  settlemark rig --ble hci1",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis =
                "settlemark rig [--tty INSTRUMENT=DEVICE] [--ble [INSTRUMENT=]ADAPTER] [--profile INSTRUMENT=PROFILE] [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class RigCommand implements Callable<Integer> {
    private final Program program;

    @Option(
            names = "--tty",
            paramLabel = "INSTRUMENT=DEVICE",
            description =
                    "gauge or air, or a name of your choice with a --profile, and the serial device that it speaks"
                            + " into; @N behind it for a Modbus unit.")
    Map<String, String> ttys = new LinkedHashMap<>();

    @Option(
            names = "--ble",
            paramLabel = "[INSTRUMENT=]ADAPTER",
            description =
                    "A Bluetooth adapter, by name or address, on which gauge or air is served and advertised, or a"
                            + " name of your choice with a --profile; without an instrument, the whole set as one device. Prints"
                            + " the address under which another adapter or computer reads it.")
    List<String> adapters = new ArrayList<>();

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
        if (ttys.isEmpty() && adapters.isEmpty()) {
            throw new ParameterException(
                    own.commandLine(), "say where the instruments speak: --tty INSTRUMENT=DEVICE or --ble ADAPTER");
        }
        Map<String, Profile> chosen = new LinkedHashMap<>();
        for (Map.Entry<String, String> entry : profiles.entrySet()) {
            Optional<Profile> profile =
                    NamedProfile.find(own, entry.getValue(), "say --profile " + entry.getKey() + "=FILE");
            if (profile.isEmpty()) {
                return Program.CHECK_FAILED;
            }
            chosen.put(entry.getKey(), profile.get());
        }
        List<Program.Tty> devices = new ArrayList<>();
        ttys.forEach((name, path) -> devices.add(new Program.Tty(name, path, Optional.ofNullable(chosen.get(name)))));
        List<Program.OnAir> onAir = new ArrayList<>();
        for (String adapter : adapters) {
            int equals = adapter.indexOf('=');
            String name = equals < 0 ? "set" : adapter.substring(0, equals);
            onAir.add(new Program.OnAir(name, adapter.substring(equals + 1), Optional.ofNullable(chosen.get(name))));
        }
        return program.rig(
                new Program.Rig(devices, onAir, Commands.seconds(own, seconds), seed, !noDropOuts),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
