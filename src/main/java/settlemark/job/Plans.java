package settlemark.job;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** The job plans that come with the program, by their key. They lie on the class path, never in the file system. */
public final class Plans {
    private static final String FOLDER = "/job-plans/";

    private Plans() {}

    /** Keys of the shipped plans. */
    public static List<String> keys() {
        return new String(resource("index.txt"), StandardCharsets.UTF_8)
                .lines()
                .filter(line -> !line.isBlank())
                .toList();
    }

    /** The text of a shipped plan, as a start for an own one; empty where there is none of that key. */
    public static Optional<byte[]> document(String key) {
        return keys().contains(key) ? Optional.of(resource(key + ".yaml")) : Optional.empty();
    }

    /** The shipped plan of a key, empty where there is none. */
    public static Optional<JobPlan> find(String key) {
        return document(key).map(text -> PlanReader.read(key + ".yaml", text).orThrow());
    }

    /**
     * The shipped plan of a key.
     *
     * @throws IllegalArgumentException where there is none
     */
    public static JobPlan get(String key) {
        return find(key)
                .orElseThrow(() -> new IllegalArgumentException(
                        "no shipped plan is called \"" + key + "\"; there are " + String.join(", ", keys())));
    }

    static byte[] resource(String name) {
        try (InputStream in = Plans.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException(FOLDER + name + " is not on the class path; build the program again");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + FOLDER + name + " from the class path", e);
        }
    }
}
