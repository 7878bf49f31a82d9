package settlemark.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code settlemark rig}: the simulated instruments on real serial devices. */
@Command(
        name = "rig",
        description = {
            "The simulated furnace's instruments speak into serial devices, as real ones would.",
            "Prints how many frames each has sent when it ends. The furnace stands on low fire."
        },
        header = {
            "Examples:",
            "  settlemark rig --tty gauge=/dev/pts/4 --tty air=/dev/pts/6",
            "  settlemark rig --tty gauge=/dev/ttyUSB1 --seconds 300 --no-drop-outs",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark rig --tty INSTRUMENT=DEVICE [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class RigCommand implements Callable<Integer> {
    private final Program program;

    @Option(
            names = "--tty",
            paramLabel = "INSTRUMENT=DEVICE",
            required = true,
            description = "gauge or air, and the serial device that it speaks into.")
    Map<String, String> ttys = new LinkedHashMap<>();

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
        ttys.forEach((instrument, path) -> devices.add(new Program.Tty(instrument, path)));
        return program.rig(
                new Program.Rig(devices, Commands.seconds(own, seconds), seed, !noDropOuts),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }
}
