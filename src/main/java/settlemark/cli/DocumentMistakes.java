package settlemark.cli;

import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import settlemark.document.Problem;

/** A document that a command was given is not right: each problem has its place, and how the command is used is no help. */
final class DocumentMistakes extends ParameterException {
    private static final long serialVersionUID = 1;

    DocumentMistakes(CommandSpec spec, List<Problem> problems) {
        super(
                spec.commandLine(),
                problems.stream().map(Problem::toString).collect(Collectors.joining(System.lineSeparator())));
    }

    /** Says these without the usage, and everything else as it was said before. */
    static IParameterExceptionHandler before(IParameterExceptionHandler usual) {
        return (mistake, arguments) -> {
            if (mistake instanceof DocumentMistakes) {
                mistake.getCommandLine().getErr().println(mistake.getMessage());
                return Program.USAGE;
            }
            return usual.handleParseException(mistake, arguments);
        };
    }
}
