package settlemark.cli;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.measure.Spelling;
import settlemark.measure.Unit;
import settlemark.session.Instruments.Kept;
import settlemark.session.StoreException;

/** {@code instruments show}. */
@Command(
        name = "show",
        description = "One instrument: calibration, correction points, battery, last zeros; and the correction where it"
                + " indicates a value.",
        header = {"Example:", "  settlemark instruments show 0042 --at 3.5 --unit inH2O", ""},
        synopsisHeading = "Usage: ",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ShowInstrumentCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "SERIAL", description = "Its serial number.")
    String serial = "";

    @Option(names = "--at", paramLabel = "VALUE", description = "What it indicates, its zero taken off.")
    @Nullable
    Double at;

    @Option(names = "--unit", paramLabel = "UNIT", defaultValue = "inH2O", description = "Of that value.")
    String unit = "";

    @Option(
            names = "--channel",
            paramLabel = "CHANNEL",
            defaultValue = "",
            description = "Channel of its profile, where channels have points of their own.")
    String channel = "";

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--json", description = "Print it as one JSON object.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    ShowInstrumentCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws StoreException {
        CommandSpec own = Commands.spec(spec);
        Unit chosen = Spelling.unit(unit)
                .orElseThrow(() -> new ParameterException(
                        own.commandLine(), "--unit must be a unit such as inH2O, Pa or degF, got \"" + unit + "\""));
        InstrumentDesk desk = program.instruments();
        Optional<Kept> kept = InstrumentsCommand.find(desk, workspace, serial);
        if (kept.isEmpty()) {
            return InstrumentsCommand.unknown(own, serial);
        }
        PrintWriter out = own.commandLine().getOut();
        if (json) {
            out.println(InstrumentText.json(kept.get(), desk.today()));
        } else {
            out.print(InstrumentText.words(kept.get(), desk.today()));
        }
        if (at != null) {
            out.println(InstrumentText.at(kept.get().card(), channel, chosen, at));
        }
        return Program.DONE;
    }
}
