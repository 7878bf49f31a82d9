package settlemark.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.job.PlateText;

/** {@code job plate}: a rating plate to fill in. */
@Command(
        name = "plate",
        description = {
            "Prints a rating plate to fill in, with what a plan reads of it.",
            "For example:",
            "  settlemark job plate boiler-gas-side > plate.yaml"
        },
        mixinStandardHelpOptions = true)
final class PlateCommand implements Callable<Integer> {
    @Parameters(paramLabel = "PLAN", description = "Key of a shipped plan, or a file of your own.")
    String plan = "";

    @Spec
    @Nullable
    CommandSpec spec;

    @Override
    public Integer call() {
        CommandSpec own = Commands.spec(spec);
        own.commandLine().getOut().print(PlateText.of(NamedPlan.read(own, plan)));
        return Program.DONE;
    }
}
