package settlemark.app;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.CodeSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.cli.Program;

/**
 * How jobs of a workspace came out when they were run through, in a file beside it. Each line holds for one program and one
 * mark of its session, so it can only agree with the session or count for nothing; without the file, or where it cannot be
 * written, the jobs are run through again. Thread-safe.
 */
final class FoundBefore {
    static final String ENDING = ".found";

    /** A workspace of thousands of jobs has a tenth of this. */
    private static final long LARGEST_BYTES = 16 << 20;

    private final Path file;
    private final String program;
    private final Map<String, String> found = new HashMap<>();
    private boolean read;

    /** @param program says which program found it; nothing is kept where it is empty */
    FoundBefore(Path workspace, String program) {
        file = workspace.resolveSibling(workspace.getFileName() + ENDING);
        this.program = program;
    }

    /**
     * The version and the very file of the program that runs; empty where it runs from loose classes, which may be changed
     * without another version.
     */
    static String program() {
        CodeSource source = FoundBefore.class.getProtectionDomain().getCodeSource();
        try {
            Path jar =
                    source == null ? Path.of("") : Path.of(source.getLocation().toURI());
            return Files.isRegularFile(jar)
                    ? Program.VERSION + " " + Files.size(jar) + " "
                            + Files.getLastModifiedTime(jar).toMillis()
                    : "";
        } catch (URISyntaxException | IOException | IllegalArgumentException e) {
            return "";
        }
    }

    /** How a session with this key and mark came out. */
    synchronized Optional<String> of(String key, String mark) {
        read();
        return Optional.ofNullable(found.get(key + "\t" + mark));
    }

    synchronized void keep(String key, String mark, String cameOut) {
        read();
        if (program.isEmpty() || cameOut.equals(found.put(key + "\t" + mark, cameOut))) {
            return;
        }
        try {
            // A line that was cut off before it ends here and is none.
            Files.writeString(
                    file,
                    "\n" + String.join("\t", program, key, mark, cameOut) + "\t.",
                    StandardCharsets.UTF_8,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        } catch (IOException e) {
            // The next start finds it again.
        }
    }

    private void read() {
        if (read || program.isEmpty()) {
            return;
        }
        read = true;
        List<String> lines = List.of();
        try {
            if (Files.exists(file) && Files.size(file) <= LARGEST_BYTES) {
                lines = new String(Files.readAllBytes(file), StandardCharsets.UTF_8)
                        .lines()
                        .toList();
            } else {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            // Nothing was found before.
        }
        int others = 0;
        for (String line : lines) {
            String[] parts = line.split("\t", -1);
            if (parts.length == 5 && parts[0].equals(program) && parts[4].equals(".")) {
                found.put(parts[1] + "\t" + parts[2], parts[3]);
            } else if (!line.isEmpty()) {
                others++;
            }
        }
        if (others > found.size()) {
            forgetOthers();
        }
    }

    /** What other programs found. */
    private void forgetOthers() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            return;
        }
        Map<String, String> mine = Map.copyOf(found);
        found.clear();
        mine.forEach((place, cameOut) -> {
            int tab = place.indexOf('\t');
            keep(place.substring(0, tab), place.substring(tab + 1), cameOut);
        });
    }
}
