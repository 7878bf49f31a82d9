package settlemark.link;

import java.io.BufferedReader;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;

/**
 * An invented laboratory instrument that answers in SCPI text: numbers in turn in the three forms of IEEE 488.2, then over
 * range and not a number, and an error queue.
 */
final class ScpiMain {
    private static final String[] NUMBERS = {"-12", "871.8", "+8.71800000E+02", "+9.90000000E+37", "9.91E37", "-9.9E37"
    };

    private ScpiMain() {}

    public static void main(String[] args) throws IOException {
        Deque<String> errors = new ArrayDeque<>();
        int measured = 0;
        try (BufferedReader in = new BufferedReader(
                        new InputStreamReader(new FileInputStream(args[0]), StandardCharsets.US_ASCII));
                OutputStream out = new FileOutputStream(args[0])) {
            System.out.println("UP");
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                switch (line.toUpperCase(Locale.ROOT)) {
                    case "*IDN?" -> say(out, "TEST WORKS,PM-1,0042,1.2.3");
                    case "*CLS" -> errors.clear();
                    case "MEAS:PRES?" -> say(out, NUMBERS[measured++ % NUMBERS.length]);
                    case "SYST:ERR?" -> say(out, errors.isEmpty() ? "0,\"No error\"" : errors.remove());
                    default -> errors.add("-113,\"Undefined header\"");
                }
            }
        }
    }

    private static void say(OutputStream out, String line) throws IOException {
        out.write((line + "\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }
}
