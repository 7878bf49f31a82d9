package settlemark.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.calc.Formula;
import settlemark.calc.Formulas;
import settlemark.calc.Inputs;
import settlemark.calc.PublishedLimits;
import settlemark.calc.RefusedInputException;
import settlemark.calc.Result;
import settlemark.measure.Dimension;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** {@code settlemark calc}: one formula of the trade, with its source and its uncertainty. */
@Command(
        name = "calc",
        header = {
            "Examples:",
            "  settlemark calc list",
            "  settlemark calc gas-flow volume=\"2 ft3\" time=\"58 s\"",
            "  settlemark calc orifice-flow drill=47 pressure=\"3.5 +- 0.03 inH2O\" relative-density=0.60"
                    + " coefficient=0.9",
            "  settlemark calc limits",
            "  settlemark calc convert value=\"3.5 inH2O\" to=mbar",
            ""
        },
        description = {
            "Computes one result. A number comes with its unit, by UCUM or as the trade writes it; what follows +- is its"
                    + " standard uncertainty. Nothing is assumed silently.",
            "NAME alone says what it asks for."
        },
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {" 0:done", " 2:an input is missing, unknown or out of range"},
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class CalcCommand implements Callable<Integer> {
    private static final String LIST = "list";
    private static final String LIMITS = "limits";
    private static final String CONVERT = "convert";

    @Parameters(index = "0", paramLabel = "NAME", description = "A formula, list, limits, or convert.")
    String name = LIST;

    @Parameters(index = "1..*", paramLabel = "KEY=VALUE", description = "Its inputs.")
    List<String> arguments = new ArrayList<>();

    @Option(names = "--in", paramLabel = "UNIT", description = "The unit of the result.")
    @Nullable
    String in;

    @Option(names = "--json", description = "For programs: value, unit, uncertainty, formula, source, warnings.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = Commands.spec(spec).commandLine().getOut();
        List<String> problems = new ArrayList<>();
        run(out, problems);
        PrintWriter err = Commands.spec(spec).commandLine().getErr();
        problems.forEach(problem -> err.println("settlemark: " + problem));
        return problems.isEmpty() ? Program.DONE : Program.USAGE;
    }

    private void run(PrintWriter out, List<String> problems) {
        if (name.equals(LIST)) {
            if (json) {
                CalcReport.listJson(Formulas.all(), out);
            } else {
                CalcReport.list(Formulas.all(), out);
            }
            return;
        }
        if (name.equals(LIMITS)) {
            if (json) {
                LimitReport.json(PublishedLimits.all(), out);
            } else {
                LimitReport.text(PublishedLimits.all(), out);
            }
            return;
        }
        Optional<Formula> formula = Formulas.find(name.toLowerCase(Locale.ROOT));
        if (formula.isEmpty()) {
            problems.add("no formula is called \"" + name + "\"; settlemark calc list names them all");
        } else if (arguments.isEmpty() && !json) {
            CalcReport.describe(formula.get(), out);
        } else {
            Optional<Result> result = name.equals(CONVERT) ? convert(problems) : compute(formula.get(), problems);
            result.flatMap(r -> shownIn(r, problems)).ifPresent(r -> print(r, out));
        }
    }

    private void print(Result result, PrintWriter out) {
        if (json) {
            CalcReport.json(result, out);
        } else {
            CalcReport.result(result, out);
        }
    }

    private Optional<Result> compute(Formula formula, List<String> problems) {
        Inputs inputs = Inputs.none();
        for (String argument : arguments) {
            inputs = CalcInput.add(inputs, formula, argument, problems);
        }
        if (!problems.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(formula.of(inputs));
        } catch (RefusedInputException e) {
            problems.addAll(e.problems());
            return Optional.empty();
        }
    }

    /** Any unit to any other of its kind; the only one whose inputs have no fixed kind. */
    private Optional<Result> convert(List<String> problems) {
        Optional<String> value = argument("value", problems);
        Optional<String> to = argument("to", problems);
        if (value.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        Formula convert = Formulas.find(CONVERT).orElseThrow();
        Optional<Quantity> quantity = CalcInput.quantity("value", value.get(), convert, problems);
        Optional<Unit> target = CalcInput.unit(to.get());
        if (target.isEmpty()) {
            problems.add("to has an unknown unit \"" + to.get() + "\"");
        }
        if (quantity.isEmpty() || target.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Result(
                    CONVERT,
                    quantity.get().to(target.get()),
                    convert.source(),
                    convert.validity(),
                    true,
                    List.of(),
                    List.of()));
        } catch (IllegalArgumentException e) {
            problems.add(e.getMessage());
            return Optional.empty();
        }
    }

    private Optional<String> argument(String key, List<String> problems) {
        Optional<String> found = arguments.stream()
                .filter(a -> a.startsWith(key + "="))
                .map(a -> a.substring(key.length() + 1))
                .findFirst();
        if (found.isEmpty()) {
            problems.add(key + " is missing: convert needs value=\"3.5 inH2O\" to=mbar");
        }
        return found;
    }

    /** A difference of temperatures is asked for by the name of its scale. */
    private static Unit like(Unit unit, Unit asked) {
        return unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE ? asked.difference() : asked;
    }

    private Optional<Result> shownIn(Result result, List<String> problems) {
        if (in == null) {
            return Optional.of(result);
        }
        Optional<Unit> unit = CalcInput.unit(in);
        if (unit.isEmpty()) {
            problems.add("--in has an unknown unit \"" + in + "\"");
        }
        try {
            return unit.map(u -> result.in(like(result.quantity().unit(), u)));
        } catch (IllegalArgumentException e) {
            problems.add("--in " + in + ": " + e.getMessage());
            return Optional.empty();
        }
    }
}
