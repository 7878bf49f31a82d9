package settlemark.app;

import java.io.Console;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import settlemark.seal.SealFiles;

/** Where pass phrases of keys come from: a file, or a person at a terminal; never an argument. */
final class Phrases {
    private static final int MOST_BYTES = 4096;

    private Phrases() {}

    /** @param file whose first line is the pass phrase, empty to ask at the terminal */
    static SealFiles.PassPhrase of(Optional<Path> file) {
        if (file.isPresent()) {
            return key -> first(file.get());
        }
        return key -> {
            Console console = System.console();
            return console == null
                    ? SealFiles.PassPhrase.NONE.ask(key)
                    : asked(console, "Pass phrase of " + key + " (not shown): ");
        };
    }

    /** A new one, said twice where it is typed; it is never printed. */
    static char[] anew(Optional<Path> file) throws IOException {
        if (file.isPresent()) {
            return first(file.get());
        }
        Console console = System.console();
        if (console == null) {
            throw new IOException("a new pass phrase needs a terminal to type at; say --phrase-file FILE instead");
        }
        char[] said = asked(console, "New pass phrase (not shown): ");
        if (!Arrays.equals(said, asked(console, "Once more: "))) {
            throw new IOException("the two pass phrases are not the same; nothing was changed");
        }
        return said;
    }

    private static char[] asked(Console console, String question) throws IOException {
        char[] said = console.readPassword("%s", question);
        if (said == null || said.length == 0) {
            throw new IOException("no pass phrase was given");
        }
        return said;
    }

    private static char[] first(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            String line = new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8)
                    .lines()
                    .findFirst()
                    .orElse("");
            if (line.isEmpty()) {
                throw new IOException(file + " has no pass phrase in its first line");
            }
            return line.toCharArray();
        }
    }
}
