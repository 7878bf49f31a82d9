package settlemark.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** The size of a window as it is written on the command line. */
final class WindowSize {
    private WindowSize() {}

    /** Width and height; 0 and 0, as large as the screen, for no words. */
    static int[] pixels(CommandSpec own, String size) {
        if (size.isEmpty()) {
            return new int[2];
        }
        if (!size.matches("[1-9][0-9]{2,4}x[1-9][0-9]{2,4}")) {
            throw new ParameterException(
                    own.commandLine(), "--size must be WIDTHxHEIGHT in pixels such as 1280x720, got \"" + size + "\"");
        }
        int x = size.indexOf('x');
        return new int[] {Integer.parseInt(size.substring(0, x)), Integer.parseInt(size.substring(x + 1))};
    }
}
