package settlemark.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Commands on device profiles: {@code profile check FILE...}. */
@Command(
        name = "profile",
        headerHeading = "Examples:%n"
                + "  settlemark profile check my-gauge.yaml%n"
                + "  settlemark profile check device-profiles/*.yaml%n%n",
        header = "Check the text files that say what a gauge's bytes mean.",
        synopsisHeading = "%nUsage: ",
        subcommands = ProfileCheckCommand.class,
        mixinStandardHelpOptions = true)
public final class ProfileCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    /** For the command line's parser. */
    public ProfileCommand() {}

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "profile needs a command, such as: profile check FILE");
    }
}
