package settlemark.record;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import settlemark.session.StoreException;

/** A file that appears under its name only when it is whole; until then it has another one. */
final class WholeFile implements Closeable {
    private final Path target;
    private final Path part;

    WholeFile(Path folder, String name) {
        this.target = folder.resolve(name);
        this.part = folder.resolve("." + name + ".part");
    }

    interface Content {
        void to(OutputStream out) throws IOException, StoreException;
    }

    /**
     * Writes the content and forces it to the disk.
     *
     * @throws IOException with the file's name
     */
    void write(Content content) throws IOException, StoreException {
        try (FileChannel channel = FileChannel.open(
                part, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
            OutputStream out = new BufferedOutputStream(new Unclosed(Channels.newOutputStream(channel)), 1 << 16);
            content.to(out);
            out.flush();
            channel.force(true);
        } catch (IOException e) {
            // A full disk says so without a name; nothing of the file stays.
            String words = String.valueOf(e.getMessage());
            throw words.contains(part.toString())
                    ? e
                    : new IOException("cannot write " + target + ": " + words + "; make room or name another place", e);
        }
    }

    /** Gives it its name. */
    Path appear() throws IOException {
        try {
            return Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            return Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Removes what never became whole. */
    @Override
    public void close() throws IOException {
        Files.deleteIfExists(part);
    }

    /** Keeps whoever writes from closing the channel before it is forced. */
    private static final class Unclosed extends FilterOutputStream {
        Unclosed(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
        }

        @Override
        public void close() throws IOException {
            flush();
        }
    }
}
