package settlemark.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.measure.Spelling;
import settlemark.measure.Unit;
import settlemark.session.StoreException;

/** {@code instruments add}. */
@Command(
        name = "add",
        description = {
            "Takes an instrument into the workspace. Its correction points come from its calibration certificate: between"
                    + " two of them readings are corrected by a straight line, outside them not at all; the record says"
                    + " which was done.",
            "Exit codes: 0 done, 1 the workspace cannot be written, 2 wrong usage or an instrument that is there already, 5"
                    + " the workspace is damaged."
        },
        header = {
            "Example:",
            "  settlemark instruments add --serial 0042 --name \"blue gauge\" --due 2027-03-01 --unit inH2O \\",
            "      --point 0:0:0.01 --point 5:5.06:0.02 --point 10:10.04:0.03",
            ""
        },
        synopsisHeading = "Usage: ",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class AddInstrumentCommand implements Callable<Integer> {
    private static final Pattern POINT =
            Pattern.compile("(?:(?<channel>[^=]+)=)?(?<true>[^:=]+):(?<shown>[^:=]+):(?<u>[^:=]+)");

    private final Program program;

    @Option(names = "--serial", required = true, paramLabel = "SERIAL", description = "Serial number on its plate.")
    String serial = "";

    @Option(names = "--name", paramLabel = "TEXT", defaultValue = "", description = "What you call it.")
    String name = "";

    @Option(
            names = "--kind",
            paramLabel = "PROFILE",
            defaultValue = "",
            description = "Id of the profile that it speaks by.")
    String kind = "";

    @Option(names = "--calibrated", paramLabel = "DAY", description = "Last calibration, such as 2026-03-01.")
    @Nullable
    String calibrated;

    @Option(names = "--due", paramLabel = "DAY", description = "Day by which the next is due.")
    @Nullable
    String due;

    @Option(names = "--unit", paramLabel = "UNIT", defaultValue = "inH2O", description = "Of the correction points.")
    String unit = "";

    @Option(
            names = "--point",
            paramLabel = "[CHANNEL=]TRUE:INDICATED:U",
            description =
                    "A correction point: the true value, what it indicated, and the uncertainty at k = 2. A channel of"
                            + " its profile before it where it is for that one alone. May be said again.")
    List<String> points = new ArrayList<>();

    @Option(names = "--replace", description = "In the place of one that is there; how it was last used stays.")
    boolean replace;

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Spec
    @Nullable
    CommandSpec spec;

    AddInstrumentCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws StoreException {
        CommandSpec own = Commands.spec(spec);
        InstrumentCard card;
        try {
            Unit chosen = unit(unit, "--unit");
            List<CorrectionPoint> all = new ArrayList<>();
            for (String point : points) {
                all.add(point(point, chosen));
            }
            card = new InstrumentCard(serial, name, kind, day(calibrated, "--calibrated"), day(due, "--due"), all);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(own.commandLine(), String.valueOf(e.getMessage()), e);
        }
        if (!replace && program.instruments().serials(workspace.file()).contains(card.serial())) {
            throw new ParameterException(
                    own.commandLine(),
                    "instrument " + card.serial() + " is there already; --replace puts this in its place");
        }
        program.instruments().put(workspace.file(), List.of(card));
        return Program.DONE;
    }

    private static CorrectionPoint point(String text, Unit unit) {
        Matcher parts = POINT.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException(
                    "--point must be TRUE:INDICATED:U such as 5:5.06:0.02, got \"" + InstrumentText.shown(text) + "\"");
        }
        String channel = parts.group("channel");
        return new CorrectionPoint(
                channel == null ? "" : channel.strip(),
                number(parts.group("true"), "--point " + text),
                number(parts.group("shown"), "--point " + text),
                number(parts.group("u"), "--point " + text),
                unit);
    }

    static double number(String text, String where) {
        try {
            double value = Double.parseDouble(text.strip());
            if (Double.isFinite(value) && text.strip().matches("[+-]?[0-9.]+([eE][+-]?[0-9]+)?")) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new IllegalArgumentException(
                where + ": \"" + InstrumentText.shown(text) + "\" must be a number, written like 3.52");
    }

    static Unit unit(String text, String where) {
        return Spelling.unit(text)
                .orElseThrow(() -> new IllegalArgumentException(where + ": \"" + InstrumentText.shown(text)
                        + "\" must be a unit such as inH2O, Pa or degF, or a UCUM code"));
    }

    /** Empty where there is no text. */
    static Optional<LocalDate> day(@Nullable String text, String where) {
        if (text == null || text.isBlank()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(text.strip()));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                    where + ": \"" + InstrumentText.shown(text) + "\" must be a day of the calendar such as 2026-03-01",
                    e);
        }
    }
}
