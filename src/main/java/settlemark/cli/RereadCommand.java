package settlemark.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.profile.Profile;
import settlemark.session.RereadReport;

/** {@code settlemark reread}: decodes a stored session again. */
@Command(
        name = "reread",
        description = {
            "Decodes a stored session again from its bytes, with a corrected profile. What was decoded on the day stays"
                    + " as it is; the new results are stored beside it, with the profile that gave them.",
            "Exit codes: 0 done, 3 a profile has a problem or makes no sample of the session's bytes, 5 the workspace is"
                    + " damaged."
        },
        header = {
            "Examples:",
            "  settlemark reread latest --profile gauge=corrected.yaml",
            "  settlemark record latest --rereading 1",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark reread SESSION [--profile PROBE=PROFILE]... [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class RereadCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
    String session = "";

    @Option(
            names = "--profile",
            paramLabel = "PROBE=PROFILE",
            description = "For a probe of the session, by its name: a profile file, or the id of a profile that comes"
                    + " with the program. A probe without one is decoded with its own again.")
    Map<String, String> profiles = new LinkedHashMap<>();

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--json", description = "Print the report as one JSON object.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    RereadCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Map<String, Profile> chosen = new LinkedHashMap<>();
        for (Map.Entry<String, String> entry : profiles.entrySet()) {
            String remedy = "say --profile " + entry.getKey() + "=FILE";
            Optional<Profile> profile = NamedProfile.find(own, entry.getValue(), remedy);
            if (profile.isEmpty()) {
                return Program.CHECK_FAILED;
            }
            chosen.put(entry.getKey(), profile.get());
        }
        Consumer<RereadReport> printed =
                report -> own.commandLine().getOut().print(json ? RereadText.json(report) : RereadText.words(report));
        return program.stored()
                .reread(
                        new StoredDesk.Reread(session, chosen, workspace.file(), keyOptions.keys(own)),
                        printed,
                        own.commandLine().getErr());
    }
}
