package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;

/** The profiles that a device is compared with: those that come with the program, and those of a person's folder. */
final class ProfileShelf {
    private static final String FILES = "*.{yaml,yml,json}";
    private static final String SCHEMA = "profile.schema.json";

    private ProfileShelf() {}

    /**
     * A profile and how a person names it.
     *
     * @param name id of a profile that comes with the program, else the path of its file
     */
    record Named(String name, Profile profile) {}

    static List<Named> shipped() {
        return ProfileLibrary.ids().stream()
                .map(id -> new Named(id, ProfileLibrary.get(id)))
                .toList();
    }

    /** The good profiles of a folder, by name; of the others it is said what is wrong with them. */
    static List<Named> of(Path folder, PrintWriter err) throws IOException {
        List<Path> files = new ArrayList<>();
        try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, FILES)) {
            found.forEach(files::add);
        }
        files.sort(null);
        Path real = folder.toRealPath();
        List<Named> profiles = new ArrayList<>();
        for (Path file : files) {
            if (file.endsWith(SCHEMA)) {
                continue;
            }
            if (!file.toRealPath().startsWith(real)) {
                err.println(file + ": left out, because it leads out of the folder");
                continue;
            }
            read(file, err).ifPresent(profile -> profiles.add(new Named(file.toString(), profile)));
        }
        return profiles;
    }

    private static Optional<Profile> read(Path file, PrintWriter err) {
        try {
            ProfileReading reading = ProfileReader.read(file.toString(), NamedProfile.bytes(file));
            if (reading.profile().isEmpty()) {
                reading.problems().forEach(err::println);
                err.println(file + ": left out, because it is no good profile");
            }
            return reading.profile();
        } catch (IOException e) {
            err.println(file + ": left out, because it cannot be read: " + e.getMessage());
            return Optional.empty();
        }
    }
}
