package settlemark.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.session.DeviceList;
import settlemark.session.DeviceView;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;

/** {@code settlemark probes}: what is in reach, how it is, and which profile fits. */
@Command(
        name = "probes",
        description = {
            "Lists the serial ports and Bluetooth devices in reach and those that were used before: which profiles fit and"
                    + " why the others do not, signal, battery, health, and how a device was used the last time."
                    + " Listens for some three seconds; nothing is connected.",
            "A profile fits where its \"recognise\" says so. One without it is chosen by hand: --profile NAME=PROFILE.",
            "Health is good, or one of the four classes of NAMUR NE 107: failure, function check, out of specification,"
                    + " maintenance required."
        },
        header = {
            "Examples:",
            "  settlemark probes",
            "  settlemark probes --profiles my-profiles --json",
            "  settlemark probes --pair ble:54:48:E6:8F:80:A5",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark probes [--profiles FOLDER] [--json] [--pair ADDRESS | --forget ADDRESS] [OPTIONS]",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {" 0:done", " 2:wrong usage", " 4:nothing is in reach, or it was not paired or forgotten"},
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ProbesCommand implements Callable<Integer> {
    private final Program program;
    private final InputStream in;

    @Option(
            names = "--profiles",
            paramLabel = "FOLDER",
            description = "Compare with the profiles in this folder too, beside those that come with the program.")
    @Nullable
    Path folder;

    @Option(names = "--adapter", paramLabel = "ADAPTER", description = "Bluetooth adapter, by name or address.")
    @Nullable
    String adapter;

    @Option(
            names = "--workspace",
            paramLabel = "FILE",
            description = "Workspace whose devices are remembered, instead of your own.")
    @Nullable
    Path workspace;

    @Option(
            names = "--pair",
            paramLabel = "ADDRESS",
            description =
                    "Pair with a Bluetooth device that gives its values only to a paired computer. You are asked.")
    @Nullable
    String pair;

    @Option(
            names = "--forget",
            paramLabel = "ADDRESS",
            description = "Remove what this computer knows of a Bluetooth device: its pairing and its services.")
    @Nullable
    String forget;

    @Option(names = "--json", description = "A JSON object a device instead of text.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    ProbesCommand(Program program, InputStream in) {
        this.program = program;
        this.in = in;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        if (pair != null && forget != null) {
            throw new ParameterException(own.commandLine(), "--pair and --forget are done one after the other");
        }
        if (pair != null) {
            return pair(own, radio(own, "--pair", pair));
        }
        return forget == null ? list(own) : forget(own, radio(own, "--forget", forget));
    }

    private static ProbeAddress radio(CommandSpec own, String option, String written) {
        ProbeAddress address =
                ProbeAddress.written(SecretFile.isAddress(written) ? ProbeAddress.BLE + ":" + written : written);
        if (address.radioBytes().isEmpty()) {
            throw new ParameterException(
                    own.commandLine(),
                    option + " must be a Bluetooth address such as ble:54:48:E6:8F:80:A5, got \"" + written + "\"");
        }
        return address;
    }

    private int pair(CommandSpec own, ProbeAddress address) throws LinkException {
        PrintWriter err = own.commandLine().getErr();
        program.pair(
                address, new TypedPairing(new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)), err));
        err.println("paired with " + address);
        return Program.DONE;
    }

    private int forget(CommandSpec own, ProbeAddress address) throws LinkException {
        program.forget(address);
        own.commandLine().getErr().println("forgot " + address);
        return Program.DONE;
    }

    private int list(CommandSpec own) throws IOException {
        PrintWriter out = own.commandLine().getOut();
        PrintWriter err = own.commandLine().getErr();
        List<ProfileShelf.Named> profiles = new ArrayList<>(ProfileShelf.shipped());
        if (folder != null) {
            if (!Files.isDirectory(folder)) {
                throw new ParameterException(own.commandLine(), "--profiles: there is no folder " + folder);
            }
            profiles.addAll(ProfileShelf.of(folder, err));
        }
        DeviceList list = program.devices(new Program.Look(
                profiles.stream().map(ProfileShelf.Named::profile).toList(),
                Optional.ofNullable(workspace),
                Optional.ofNullable(adapter)));
        // Those that one looks for come first; strangers are many.
        list.devices().stream()
                .map(device -> Fitting.of(device, profiles))
                .sorted(Comparator.comparing(fitting -> fitting.isStranger() ? 1 : 0))
                .forEach(fitting -> out.print(json ? JsonLine.text(fitting.json()) + "\n" : fitting.text()));
        list.remarks().forEach(err::println);
        if (list.devices().stream().map(DeviceView::probe).noneMatch(p -> p.inReach())) {
            err.println("Nothing is in reach: plug the gauge or its adapter in, or switch the Bluetooth probe on. A"
                    + " pseudo terminal is not listed; name it by its path.");
            return Program.NO_PROBE;
        }
        return Program.DONE;
    }
}
