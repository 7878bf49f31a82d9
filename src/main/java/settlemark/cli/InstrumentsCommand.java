package settlemark.cli;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.session.Instruments.Kept;
import settlemark.session.StoreException;

/** Commands on the instruments of a workspace. */
@Command(
        name = "instruments",
        headerHeading = "Examples:%n" + "  settlemark instruments add --serial 0042 --name \"blue gauge\""
                + " --calibrated 2026-03-01 --due 2027-03-01%n"
                + "  settlemark instruments import certificate.csv%n"
                + "  settlemark instruments show 0042 --at 3.5 --unit inH2O%n"
                + "  settlemark instruments due --within 60%n%n",
        header = "Instruments by serial number: calibration, when it is due, correction points.",
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class InstrumentsCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    private InstrumentsCommand() {}

    static CommandLine line(Program program) {
        return new CommandLine(new InstrumentsCommand())
                .addSubcommand(new ListInstruments(program))
                .addSubcommand(new AddInstrumentCommand(program))
                .addSubcommand(new ShowInstrumentCommand(program))
                .addSubcommand(new DueInstruments(program))
                .addSubcommand(new ImportInstrumentsCommand(program))
                .addSubcommand(new RemoveInstrument(program));
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "instruments needs a command: instruments list, instruments add, instruments show SERIAL, instruments"
                        + " due, instruments import FILE or instruments remove SERIAL");
    }

    /** One instrument of a workspace. */
    static Optional<Kept> find(InstrumentDesk desk, WorkspaceOption workspace, String serial) throws StoreException {
        return desk.all(workspace.file()).stream()
                .filter(k -> k.card().serial().equals(serial.strip()))
                .findFirst();
    }

    static int unknown(CommandSpec own, String serial) {
        own.commandLine()
                .getErr()
                .println("settlemark: the workspace has no instrument \"" + InstrumentText.shown(serial)
                        + "\"; \"settlemark instruments list\" shows those it has");
        return Program.USAGE;
    }

    /** {@code instruments list}. */
    @Command(
            name = "list",
            description = "The instruments of a workspace, in order of serial numbers.",
            mixinStandardHelpOptions = true)
    static final class ListInstruments implements Callable<Integer> {
        private final Program program;

        @Mixin
        WorkspaceOption workspace = new WorkspaceOption();

        @Option(names = "--json", description = "Print each as a JSON object, one a line.")
        boolean json;

        @Spec
        @Nullable
        CommandSpec spec;

        ListInstruments(Program program) {
            this.program = program;
        }

        @Override
        public Integer call() throws StoreException {
            InstrumentDesk desk = program.instruments();
            List<Kept> all = desk.all(workspace.file());
            PrintWriter out = Commands.spec(spec).commandLine().getOut();
            if (json) {
                all.forEach(k -> out.println(InstrumentText.json(k, desk.today())));
            } else {
                out.print(InstrumentText.table(all, desk.today()));
            }
            return Program.DONE;
        }
    }

    /** {@code instruments due}. */
    @Command(
            name = "due",
            description = {
                "The instruments whose calibration is overdue, or is due soon. Nothing is refused because of it; records"
                        + " made with such an instrument say so.",
                "Exit codes: 0, or 3 where one is overdue."
            },
            mixinStandardHelpOptions = true)
    static final class DueInstruments implements Callable<Integer> {
        private static final int MOST_DAYS = 36_500;

        private final Program program;

        @Option(
                names = "--within",
                paramLabel = "DAYS",
                defaultValue = "30",
                description = "How far ahead soon is, 0 to 36500.")
        int days;

        @Mixin
        WorkspaceOption workspace = new WorkspaceOption();

        @Option(names = "--json", description = "Print each as a JSON object, one a line.")
        boolean json;

        @Spec
        @Nullable
        CommandSpec spec;

        DueInstruments(Program program) {
            this.program = program;
        }

        @Override
        public Integer call() throws StoreException {
            CommandSpec own = Commands.spec(spec);
            if (days < 0 || days > MOST_DAYS) {
                throw new ParameterException(own.commandLine(), "--within must be 0 to 36500 days, got " + days);
            }
            InstrumentDesk desk = program.instruments();
            LocalDate today = desk.today();
            List<Kept> due = desk.all(workspace.file()).stream()
                    .filter(k -> k.card()
                            .due()
                            .filter(d -> !d.isAfter(today.plusDays(days)))
                            .isPresent())
                    .toList();
            PrintWriter out = own.commandLine().getOut();
            if (json) {
                due.forEach(k -> out.println(InstrumentText.json(k, today)));
            } else {
                out.print(InstrumentText.table(due, today));
            }
            return due.stream().anyMatch(k -> k.card().overdue(today)) ? Program.CHECK_FAILED : Program.DONE;
        }
    }

    /** {@code instruments remove}. */
    @Command(
            name = "remove",
            description = "Removes an instrument. Sessions that it measured in keep what was known of it.",
            mixinStandardHelpOptions = true)
    static final class RemoveInstrument implements Callable<Integer> {
        private final Program program;

        @Parameters(paramLabel = "SERIAL", description = "Its serial number.")
        String serial = "";

        @Mixin
        WorkspaceOption workspace = new WorkspaceOption();

        @Spec
        @Nullable
        CommandSpec spec;

        RemoveInstrument(Program program) {
            this.program = program;
        }

        @Override
        public Integer call() throws StoreException {
            CommandSpec own = Commands.spec(spec);
            return program.instruments().remove(workspace.file(), serial) ? Program.DONE : unknown(own, serial);
        }
    }
}
