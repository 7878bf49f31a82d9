package settlemark.store;

import java.io.FileInputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import settlemark.session.SessionEvent;
import settlemark.session.StoreException;

/**
 * Writes a small workspace again and again, each time with a later call to the disk failing, until none fails any more;
 * says for each what had been acknowledged and what is there afterwards. For a process that failing-calls.c is loaded in.
 */
final class FaultyWriter {
    private static final Logger DRIVER = Logger.getLogger("org.sqlite");
    private static final int BATCHES = 3;

    private FaultyWriter() {}

    /** @param arguments a folder named faulty-disk */
    public static void main(String[] arguments) throws IOException, StoreException {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        DRIVER.setLevel(Level.OFF);
        Path folder = Path.of(arguments[0]);
        // What is loaded and made once must not count.
        run(folder.resolve("first"), new ArrayList<>());
        boolean failed = true;
        for (int call = 1; failed; call++) {
            Path file = folder.resolve("w" + call);
            List<String> words = new ArrayList<>();
            control(Integer.toString(call));
            int acknowledged = run(file, words);
            failed = control("?").contains("Permission denied");
            control("0");
            out.println("call " + call + (failed ? " failed, acknowledged " : " never came, acknowledged ")
                    + acknowledged + ", stored " + stored(file) + " " + words);
        }
    }

    private static String control(String word) {
        try (FileInputStream in = new FileInputStream("/failing-call/" + word)) {
            return "opened " + in;
        } catch (IOException e) {
            return String.valueOf(e.getMessage());
        }
    }

    /** Returns how many steps were acknowledged: the session, and then its batches. */
    private static int run(Path file, List<String> words) {
        int acknowledged = 0;
        try (SqliteStore store = Fixtures.open(file)) {
            long session = store.begin(Fixtures.log("log"));
            acknowledged++;
            for (int n = 0; n < BATCHES; n++) {
                store.append(session, Fixtures.second(n));
                acknowledged++;
            }
            store.end(session, BATCHES * Fixtures.SECOND);
        } catch (StoreException e) {
            words.add(String.valueOf(e.getMessage()));
        }
        return acknowledged;
    }

    private static int stored(Path file) throws IOException, StoreException {
        if (!Files.exists(file)) {
            return 0;
        }
        try (SqliteStore store = Fixtures.open(file)) {
            if (store.sessions().isEmpty()) {
                return 0;
            }
            List<SessionEvent> events = new ArrayList<>();
            store.events(1, events::add);
            int batches = events.size() / 20;
            List<SessionEvent> expected = new ArrayList<>();
            for (int n = 0; n < batches; n++) {
                expected.addAll(Fixtures.second(n).events());
            }
            boolean same = events.equals(expected)
                    && store.samples(1, 1, 1, 0, Long.MAX_VALUE).size() == 10 * batches
                    && store.sampleCount(1, 0) == 20L * batches;
            return same ? 1 + batches : -1;
        }
    }
}
