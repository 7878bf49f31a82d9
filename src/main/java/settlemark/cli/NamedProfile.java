package settlemark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import settlemark.document.DocumentLimits;
import settlemark.document.Problem;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;

/** A profile as a person names it: the id of one that comes with the program, or a file. */
final class NamedProfile {
    private NamedProfile() {}

    /**
     * Finds a profile; what is wrong with its file is printed.
     *
     * @param remedy how another one is named, for the message where there is none
     * @return empty where the file has errors
     * @throws ParameterException where there is neither such an id nor such a file
     */
    static Optional<Profile> find(CommandSpec command, String name, String remedy) throws IOException {
        Optional<Profile> shipped = ProfileLibrary.find(name);
        if (shipped.isPresent()) {
            return shipped;
        }
        Path file = file(name)
                .orElseThrow(() -> new ParameterException(
                        command.commandLine(),
                        "no profile \"" + name + "\": neither a file nor one of " + ProfileLibrary.ids() + "; "
                                + remedy));
        ProfileReading reading = ProfileReader.read(name, bytes(file));
        for (Problem problem : reading.problems()) {
            command.commandLine().getErr().println(problem);
        }
        return reading.profile();
    }

    private static Optional<Path> file(String name) {
        try {
            return Optional.of(Path.of(name)).filter(Files::isRegularFile);
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    /** The file's bytes; one more than is allowed, so that the reader can say that there is too much. */
    static byte[] bytes(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(DocumentLimits.DEFAULT.maximumBytes() + 1);
        }
    }
}
