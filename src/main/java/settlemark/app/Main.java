package settlemark.app;

import java.awt.GraphicsEnvironment;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import settlemark.cli.Commands;

/** Where the program starts. Without arguments it opens the window, or runs the demo headless without a display. */
public final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        // Straight to the descriptors, so that a full disk or a closed pipe is noticed, and always UTF-8.
        PrintWriter out = writer(FileDescriptor.out);
        PrintWriter err = writer(FileDescriptor.err);
        String[] line = arguments.length == 0
                ? new String[] {GraphicsEnvironment.isHeadless() ? "demo" : "desktop"}
                : arguments;
        int code = Commands.run(new Settlemark(), out, err, line);
        System.exit(code);
    }

    private static PrintWriter writer(FileDescriptor descriptor) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), true);
    }
}
