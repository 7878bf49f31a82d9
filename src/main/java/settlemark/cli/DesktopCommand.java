package settlemark.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
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

/** {@code settlemark desktop}: the window, from its first choice on. */
@Command(
        name = "desktop",
        description = "Opens the window: try the demo rig, or connect probes and do a job. Nothing is connected that is"
                + " not chosen there.",
        header = {
            "Examples:",
            "  settlemark desktop",
            "  settlemark desktop --profiles my-profiles --workspace house.settlemark",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark desktop [OPTIONS]",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {" 0:done", " 1:no display, or not everything was stored", " 2:wrong usage"},
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class DesktopCommand implements Callable<Integer> {
    private final Program program;

    @Option(
            names = "--profiles",
            paramLabel = "FOLDER",
            description = "Offer the profiles in this folder too, beside those that come with the program.")
    @Nullable
    Path folder;

    @Option(names = "--adapter", paramLabel = "ADAPTER", description = "Bluetooth adapter, by name or address.")
    @Nullable
    String adapter;

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--out", paramLabel = "FOLDER", description = "Where the record goes.")
    @Nullable
    Path records;

    @Mixin
    WindowOptions look = new WindowOptions();

    @Spec
    @Nullable
    CommandSpec spec;

    DesktopCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        PrintWriter err = own.commandLine().getErr();
        int[] pixels = look.pixels(own);
        look.speak(own, program);
        List<ProfileShelf.Named> profiles = new ArrayList<>(ProfileShelf.shipped());
        if (folder != null) {
            if (!Files.isDirectory(folder)) {
                throw new ParameterException(own.commandLine(), "--profiles: there is no folder " + folder);
            }
            profiles.addAll(ProfileShelf.of(folder, err));
        }
        Program.Desk request = new Program.Desk(
                workspace.file(),
                Optional.ofNullable(records),
                profiles.stream().map(ProfileShelf.Named::profile).toList(),
                Optional.ofNullable(adapter),
                look.dark,
                pixels[0],
                pixels[1]);
        return program.desktop(request, own.commandLine().getOut(), err);
    }
}
