package settlemark.cli;

import java.io.Console;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import settlemark.profile.ByteText;

/**
 * Keys of protected devices, from a file or typed without echo. They are never printed, not even where they are wrong, and
 * never an argument: arguments stay in the shell's history and are seen by other users.
 */
final class SecretFile {
    private static final int MOST_BYTES = 1000;
    private static final String WANTED = "a key is 32 hexadecimal digits and nothing else; it is not shown here";

    private SecretFile() {}

    /** The key in a file. */
    static ByteText key(CommandSpec command, Path file) throws IOException {
        Commands.checkFile(command, file);
        try (InputStream in = Files.newInputStream(file)) {
            String text = new String(in.readNBytes(MOST_BYTES), StandardCharsets.ISO_8859_1);
            return key(command, file + ": " + WANTED, text);
        }
    }

    /** Asks at the terminal. */
    static ByteText typedKey(CommandSpec command) {
        Console console = System.console();
        if (console == null) {
            throw new ParameterException(
                    command.commandLine(), "--ask-key needs a terminal to type at; say --key-file FILE instead");
        }
        char[] typed = console.readPassword("Key (32 hexadecimal digits, not shown): ");
        String text = typed == null ? "" : new String(typed);
        if (typed != null) {
            Arrays.fill(typed, ' ');
        }
        return key(command, WANTED, text);
    }

    private static ByteText key(CommandSpec command, String complaint, String text) {
        String digits = text.replaceAll("\\s+", "");
        if (!digits.matches("[0-9A-Fa-f]{32}")) {
            throw new ParameterException(command.commandLine(), complaint);
        }
        return ByteText.ofHex(digits);
    }

    static boolean isAddress(String text) {
        return text.matches("[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}");
    }

    /** The address of a device as it is written, such as {@code 54:48:E6:8F:80:A5}. */
    static ByteText address(CommandSpec command, String address) {
        if (!isAddress(address)) {
            throw new ParameterException(
                    command.commandLine(),
                    "a device address is six pairs of hexadecimal digits such as 54:48:E6:8F:80:A5, got \"" + address
                            + "\"");
        }
        return ByteText.ofHex(address.replaceAll("[:-]", ""));
    }
}
