package settlemark.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.util.Arrays;

/**
 * What a command line came to.
 *
 * @param code exit code
 * @param out data
 * @param err messages
 */
record Ran(int code, String out, String err) {
    static Ran of(Program program, Object... arguments) {
        StringWriter out = new StringWriter();
        return into(out, program, arguments);
    }

    /** With an output of the test's own. */
    static Ran into(Writer out, Program program, Object... arguments) {
        StringWriter err = new StringWriter();
        String[] words = Arrays.stream(arguments).map(Object::toString).toArray(String[]::new);
        int code = Commands.run(program, new PrintWriter(out), new PrintWriter(err), words);
        return new Ran(code, out.toString(), err.toString());
    }
}
