package settlemark.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Commands on a workspace's file: {@code store check}, {@code repair}, {@code compact} and {@code backup}. */
@Command(
        name = "store",
        headerHeading = "Examples:%n" + "  settlemark store check w.settlemark%n"
                + "  settlemark store backup w.settlemark --to backup.settlemark%n%n",
        header = "Check a workspace, save what is whole of a damaged one, back it up, give unused room back.",
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class StoreCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    private StoreCommand() {}

    static CommandLine line(Program program) {
        return new CommandLine(new StoreCommand())
                .addSubcommand(new StoreCheckCommand(program))
                .addSubcommand(new StoreRepairCommand(program))
                .addSubcommand(new StoreCompactCommand(program))
                .addSubcommand(new StoreBackupCommand(program));
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "store needs a command: store check, store repair, store compact or store backup");
    }
}
