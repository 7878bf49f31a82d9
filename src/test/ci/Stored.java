import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import settlemark.profile.Profile;
import settlemark.session.SessionEvent;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/**
 * Looks into a workspace from outside. Run with the program's jar on the class path.
 *
 * <p>{@code count WORKSPACE N0 N1...}: the newest session holds at least N samples of each probe. {@code stream WORKSPACE
 * N RAW0 RAW1...}: it holds at least N samples of each probe, and the bytes of each are one uncut piece of what its file
 * holds. Exit code 1 where that is not so.
 */
final class Stored {
    private Stored() {}

    public static void main(String[] args) throws StoreException, IOException {
        boolean good = true;
        try (SessionStore store = SqliteStore.openForReading(Path.of(args[1]), Stored::noProfile)) {
            long session = store.sessions().get(0).number();
            int first = args[0].equals("stream") ? 3 : 2;
            for (int probe = 0; probe < args.length - first; probe++) {
                String argument = args[first + probe];
                long least = Long.parseLong(args[0].equals("stream") ? args[2] : argument);
                long samples = store.sampleCount(session, probe);
                System.out.println("probe " + probe + ": " + samples + " samples, at least " + least + " expected");
                good &= samples >= least;
                if (args[0].equals("stream")) {
                    good &= uncut(bytes(store, session, probe), Files.readAllBytes(Path.of(argument)), argument);
                }
            }
        }
        System.exit(good ? 0 : 1);
    }

    private static byte[] bytes(SessionStore store, long session, int probe) throws StoreException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        store.events(session, event -> {
            if (event instanceof SessionEvent.Bytes bytes && bytes.probe() == probe) {
                all.writeBytes(bytes.chunk().bytes());
            }
        });
        return all.toByteArray();
    }

    private static boolean uncut(byte[] stored, byte[] said, String name) {
        // One character a byte, so that a piece of bytes can be looked for as text.
        String whole = new String(said, StandardCharsets.ISO_8859_1);
        int at = whole.indexOf(new String(stored, StandardCharsets.ISO_8859_1));
        System.out.println(stored.length + " bytes stored of " + said.length + " said in " + name
                + (at < 0 ? ", NOT one uncut piece of them" : ", one uncut piece from byte " + at));
        return stored.length > 0 && at >= 0;
    }

    private static Profile noProfile(String text) {
        throw new IllegalArgumentException("not needed to count");
    }
}
