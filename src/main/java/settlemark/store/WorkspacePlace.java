package settlemark.store;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * Where a workspace lies. The default place follows the platform's custom (XDG Base Directory Specification 0.8 on
 * Linux and other Unix systems); its folder is made where it is missing, while the folder of a chosen file must exist.
 *
 * @param file the workspace
 * @param makeFolder whether a missing folder is made
 */
public record WorkspacePlace(Path file, boolean makeFolder) {
    private static final String PERSON = "workspace.settlemark";
    private static final String DEMO = "demo.settlemark";

    public WorkspacePlace {
        Objects.requireNonNull(file);
    }

    /** A file that a person has named. */
    public static WorkspacePlace chosen(Path file) {
        return new WorkspacePlace(file, false);
    }

    /**
     * The person's own workspace.
     *
     * @param osName system property {@code os.name}
     * @param environment environment variables
     * @param home the person's home folder
     */
    public static WorkspacePlace ofPerson(String osName, Map<String, String> environment, Path home) {
        return new WorkspacePlace(dataFolder(osName, environment, home).resolve(PERSON), true);
    }

    /** The demo's workspace, which never holds anything real; arguments as for the person's own. */
    public static WorkspacePlace ofDemo(String osName, Map<String, String> environment, Path home) {
        return new WorkspacePlace(dataFolder(osName, environment, home).resolve(DEMO), true);
    }

    private static Path dataFolder(String osName, Map<String, String> environment, Path home) {
        String os = osName.toLowerCase(Locale.ROOT);
        if (os.startsWith("windows")) {
            String local = environment.getOrDefault("LOCALAPPDATA", "");
            Path base = local.isBlank() ? home.resolve("AppData").resolve("Local") : Path.of(local);
            return base.resolve("Settlemark");
        }
        if (os.startsWith("mac")) {
            return home.resolve("Library").resolve("Application Support").resolve("Settlemark");
        }
        String data = environment.getOrDefault("XDG_DATA_HOME", "");
        // The specification has relative paths ignored.
        Path base =
                data.startsWith("/") ? Path.of(data) : home.resolve(".local").resolve("share");
        return base.resolve("settlemark");
    }
}
