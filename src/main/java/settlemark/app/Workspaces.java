package settlemark.app;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.session.StoreException;
import settlemark.session.StoreTools;
import settlemark.store.SqliteStore;
import settlemark.store.WorkspacePlace;
import settlemark.store.WorkspaceTools;

/** Where workspaces and records lie on this machine. */
final class Workspaces {
    static final Function<String, Profile> PROFILES =
            new ReadBefore(text -> ProfileReader.read("stored profile", text.getBytes(StandardCharsets.UTF_8))
                    .orThrow());

    /** One thread that packs blocks while there are any to pack. */
    private static final Executor PACKER =
            new ThreadPoolExecutor(0, 1, 5, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), Workspaces::packer);

    private Workspaces() {}

    /** The profiles that were read last: every session of the same probes has the same, and reading one takes long. */
    private static final class ReadBefore implements Function<String, Profile> {
        private static final int MOST = 32;
        private final Function<String, Profile> reader;
        private final Map<String, Profile> last = new LinkedHashMap<>(MOST, 0.75f, true);

        ReadBefore(Function<String, Profile> reader) {
            this.reader = reader;
        }

        @Override
        public synchronized Profile apply(String text) {
            Profile profile = last.get(text);
            if (profile == null) {
                profile = reader.apply(text);
                last.put(text, profile);
                if (last.size() > MOST) {
                    last.remove(last.keySet().iterator().next());
                }
            }
            return profile;
        }
    }

    private static Thread packer(Runnable work) {
        Thread thread = new Thread(work, "store-packer");
        // What it has not done is packed when the session is next written to.
        thread.setDaemon(true);
        return thread;
    }

    static SqliteStore demo(Optional<Path> chosen) throws StoreException {
        return open(chosen.map(WorkspacePlace::chosen).orElseGet(Workspaces::demoPlace));
    }

    static SqliteStore person(Optional<Path> chosen) throws StoreException {
        return open(chosen.map(WorkspacePlace::chosen).orElseGet(Workspaces::personPlace));
    }

    private static SqliteStore open(WorkspacePlace place) throws StoreException {
        return SqliteStore.open(place, PROFILES, PACKER);
    }

    /** For writing, where there is one already. */
    static SqliteStore existing(Optional<Path> chosen) throws StoreException {
        reading(chosen).close();
        return person(chosen);
    }

    /** Whether the person has a workspace of their own already. */
    static boolean hasOwn() {
        return Files.exists(personPlace().file());
    }

    static SqliteStore reading(Optional<Path> chosen) throws StoreException {
        return SqliteStore.openForReading(file(chosen), PROFILES);
    }

    static StoreTools tools() {
        return new WorkspaceTools(PROFILES);
    }

    /** Where a workspace lies, whether or not there is one. */
    static Path file(Optional<Path> chosen) {
        return chosen.orElseGet(() -> personPlace().file());
    }

    /** Where the demo's workspace lies, whether or not there is one. */
    static Path demoFile() {
        return demoPlace().file();
    }

    /** The folder of a workspace's records. */
    static Path records(SqliteStore store, Optional<Path> chosen) {
        return chosen.orElseGet(() -> store.file().toAbsolutePath().resolveSibling("records"));
    }

    private static WorkspacePlace demoPlace() {
        return WorkspacePlace.ofDemo(System.getProperty("os.name", ""), System.getenv(), home());
    }

    private static WorkspacePlace personPlace() {
        return WorkspacePlace.ofPerson(System.getProperty("os.name", ""), System.getenv(), home());
    }

    private static Path home() {
        return Path.of(System.getProperty("user.home", "."));
    }
}
