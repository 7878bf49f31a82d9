package settlemark.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.session.ProbeHost.FoundProbe;

/** {@code settlemark probes}: what is in reach, and which profile fits. */
@Command(
        name = "probes",
        description = {
            "Lists the serial ports in reach, and for each which profiles fit and why the others do not.",
            "A profile fits where its \"recognise\" says so. One without it is chosen by hand: --profile NAME=PROFILE."
        },
        header = {"Examples:", "  settlemark probes", "  settlemark probes --profiles my-profiles --json", ""},
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark probes [--profiles FOLDER] [--json]",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {" 0:done", " 2:wrong usage", " 4:nothing is in reach"},
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ProbesCommand implements Callable<Integer> {
    private final Program program;

    @Option(
            names = "--profiles",
            paramLabel = "FOLDER",
            description = "Compare with the profiles in this folder too, beside those that come with the program.")
    @Nullable
    Path folder;

    @Option(names = "--json", description = "A JSON object a port instead of text.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    ProbesCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        PrintWriter out = own.commandLine().getOut();
        PrintWriter err = own.commandLine().getErr();
        List<ProfileShelf.Named> profiles = new ArrayList<>(ProfileShelf.shipped());
        if (folder != null) {
            if (!Files.isDirectory(folder)) {
                throw new ParameterException(own.commandLine(), "--profiles: there is no folder " + folder);
            }
            profiles.addAll(ProfileShelf.of(folder, err));
        }
        List<FoundProbe> found = program.inReach();
        err.println("Serial ports only: this version does not look for Bluetooth devices.");
        for (FoundProbe probe : found) {
            Fitting fitting = Fitting.of(probe, profiles);
            out.print(json ? JsonLine.text(fitting.json()) + "\n" : fitting.text());
        }
        if (found.isEmpty()) {
            err.println("No serial port is in reach: plug the gauge or its adapter in. A pseudo terminal is not listed;"
                    + " name it by its path.");
            return Program.NO_PROBE;
        }
        return Program.DONE;
    }
}
