package settlemark.profile;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** The profiles that are shipped with the program, by their id. They lie on the class path, never in the file system. */
public final class ProfileLibrary {
    private static final String FOLDER = "/device-profiles/";

    private ProfileLibrary() {}

    /** Ids of the shipped profiles. */
    public static List<String> ids() {
        return text("index.txt").lines().filter(line -> !line.isBlank()).toList();
    }

    /** The shipped profile with an id, empty where there is none. */
    public static Optional<Profile> find(String id) {
        return document(id).map(bytes -> ProfileReader.read(id + ".yaml", bytes).orThrow());
    }

    /**
     * The shipped profile with an id.
     *
     * @throws IllegalArgumentException where there is none
     */
    public static Profile get(String id) {
        return find(id).orElseThrow(() -> new IllegalArgumentException(
                "no shipped profile is called \"" + id + "\"; there are " + String.join(", ", ids())));
    }

    /** The text of the shipped profile with an id, as a start for an own one; empty where there is none. */
    public static Optional<byte[]> document(String id) {
        return ids().contains(id) ? Optional.of(resource(id + ".yaml")) : Optional.empty();
    }

    static byte[] resource(String name) {
        try (InputStream in = ProfileLibrary.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException(FOLDER + name + " is not on the class path; build the program again");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + FOLDER + name + " from the class path", e);
        }
    }

    private static String text(String name) {
        return new String(resource(name), StandardCharsets.UTF_8);
    }
}
