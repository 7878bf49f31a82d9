package settlemark.cli;

import java.io.InputStream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Commands on device profiles: {@code profile check}, {@code profile decode} and {@code profile new}. */
@Command(
        name = "profile",
        headerHeading = "Examples:%n" + "  settlemark profile new%n" + "  settlemark profile check my-gauge.yaml%n%n",
        header = "Write, check and try the text files that say what a gauge's bytes mean.",
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class ProfileCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    private ProfileCommand() {}

    /**
     * The command with its own commands.
     *
     * @param in a person's answers
     */
    static CommandLine line(Program program, InputStream in) {
        return new CommandLine(new ProfileCommand())
                .addSubcommand(new ProfileCheckCommand())
                .addSubcommand(new ProfileDecodeCommand(program))
                .addSubcommand(new ProfileNewCommand(in));
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "profile needs a command: profile check FILE..., profile decode PROFILE or profile new");
    }
}
