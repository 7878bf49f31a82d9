package settlemark.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** How a window begins: the same for every command that opens one. */
final class WindowOptions {
    @Option(names = "--dark", description = "The window begins dark.")
    boolean dark;

    @Option(names = "--size", paramLabel = "WxH", defaultValue = "", description = "Size of the window in pixels.")
    String size = "";

    @Option(
            names = "--language",
            paramLabel = "CODE",
            defaultValue = "",
            description = "Language of the window: en, de; else the one that was kept.")
    String language = "";

    /** Hands the language on where one was named. */
    void speak(CommandSpec own, Program program) {
        if (!language.isEmpty() && !program.speaks(language)) {
            throw new ParameterException(own.commandLine(), "--language must be en or de, got \"" + language + "\"");
        }
    }

    /** Width and height; 0 and 0, as large as the screen, for no words. */
    int[] pixels(CommandSpec own) {
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
