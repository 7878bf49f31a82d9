package settlemark.document;

import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** What the YAML parser found, in one line and with a remedy for the usual slips. */
final class SyntaxMessages {
    private SyntaxMessages() {}

    static String of(MarkedYamlEngineException e) {
        String problem = firstLine(e.getProblem());
        return "not YAML: " + problem + remedy(problem);
    }

    static String firstLine(@Nullable String message) {
        if (message == null) {
            return "no reason given";
        }
        int end = message.indexOf('\n');
        return (end < 0 ? message : message.substring(0, end)).strip();
    }

    private static String remedy(String problem) {
        if (problem.contains("TAB")) {
            return "";
        } else if (problem.contains("mapping values are not allowed")) {
            return " (check the indentation, and quote text that holds a colon)";
        } else if (problem.contains("cannot start any token")) {
            return " (quote the text)";
        } else if (problem.contains("unexpected end of stream")) {
            return " (a quote is not closed)";
        } else if (problem.contains("expected ',' or")) {
            return " (a bracket is not closed)";
        } else if (problem.contains("expected <block end>")) {
            return " (check the indentation)";
        }
        return "";
    }
}
