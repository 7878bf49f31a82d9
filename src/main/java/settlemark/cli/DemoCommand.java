package settlemark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code settlemark demo}: a whole job on the simulated furnace. */
@Command(
        name = "demo",
        description = "Runs a whole job on a simulated two-stage furnace. Everything from it says SIMULATED.",
        header = {
            "Examples:",
            "  settlemark demo                        in the window, or headless without a display",
            "  settlemark demo --headless --out .     headless; prints the stage table and the record's files",
            "  settlemark demo --headless --plan supply-check --fault undersized-pipe",
            "  settlemark demo --ble hci1,hci0        headless, each value by the radio from hci1 to hci0",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark demo [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class DemoCommand implements Callable<Integer> {
    private final Program program;

    @Option(names = "--headless", description = "No window; faster than real time.")
    boolean headless;

    @Option(
            names = "--ble",
            paramLabel = "SERVING[,READING]",
            description =
                    "The instruments as a Bluetooth device on one adapter, read through another; headless. Says at"
                            + " the end whether the readings agree with what was really so; exit code 3 where they do not.")
    @Nullable
    String ble;

    @Option(
            names = "--plan",
            paramLabel = "PLAN",
            description = "A shipped job plan by its key, or a file of your own; \"settlemark job plans\" lists them.")
    @Nullable
    String plan;

    @Option(
            names = "--fault",
            paramLabel = "FAULT",
            description = {
                "Something that is wrong with the furnace or its instruments; may be said more than once:",
                "undersized-pipe, regulator-creep, letting-by, wrong-orifice, cap-shift, valve-creep, slow-blower, zero-drift,"
                        + " stage-missing, swapped-hoses."
            })
    List<String> faults = new ArrayList<>();

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of the simulated instruments.")
    long seed;

    @Option(names = "--workspace", paramLabel = "FILE", description = "Another workspace than the demo's own.")
    @Nullable
    Path workspace;

    @Option(names = "--out", paramLabel = "FOLDER", description = "Where the record goes.")
    @Nullable
    Path folder;

    @Mixin
    WindowOptions look = new WindowOptions();

    @Option(
            names = "--speed",
            paramLabel = "N",
            defaultValue = "1",
            description = "Times real time in the window: 1, 4, 10 or 30.")
    int speed;

    @Spec
    @Nullable
    CommandSpec spec;

    DemoCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        int[] pixels = look.pixels(own);
        look.speak(own, program);
        Program.Demo request = new Program.Demo(
                headless,
                seed,
                Optional.ofNullable(workspace),
                Optional.ofNullable(folder),
                look.dark,
                pixels[0],
                pixels[1],
                speed,
                air(own),
                Optional.ofNullable(plan == null ? null : NamedPlan.read(own, plan)),
                faults);
        return program.demo(
                request, own.commandLine().getOut(), own.commandLine().getErr());
    }

    private Optional<Program.Air> air(CommandSpec own) {
        if (ble == null) {
            return Optional.empty();
        }
        if (!ble.matches("[^,]+(,[^,]+)?")) {
            throw new ParameterException(
                    own.commandLine(), "--ble must be one adapter or two such as hci1,hci0, got \"" + ble + "\"");
        }
        int comma = ble.indexOf(',');
        return Optional.of(
                comma < 0
                        ? new Program.Air(ble, Optional.empty())
                        : new Program.Air(ble.substring(0, comma), Optional.of(ble.substring(comma + 1))));
    }
}
