package settlemark.seal;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Seals, their key and the sealed files, as they lie in folders. */
public final class SealFiles {
    private static final String FILE = "file ";
    private static final char[] NO_PHRASE = {};
    private static final long LARGEST_KEY_BYTES = 1 << 16;

    private SealFiles() {}

    /** Gives a pass phrase when one is needed. */
    @FunctionalInterface
    public interface PassPhrase {
        /** Nobody is there to say one. */
        PassPhrase NONE = file -> {
            throw new SealException(
                    file + " is protected by a pass phrase, and none was given; say --phrase-file FILE, or"
                            + " run the command at a terminal, where it asks");
        };

        /** @throws SealException where there is none to be had */
        char[] ask(Path file) throws SealException, IOException;
    }

    /**
     * The key of a workspace; made on first use, readable for its owner only where the file system can say so.
     *
     * @param phrase asked only where the file is protected
     * @throws SealException where the file holds no key, or its pass phrase is missing or wrong
     */
    public static SealKey key(Path file, PassPhrase phrase) throws IOException, SealException {
        if (!Files.exists(file)) {
            SealKey made = SealKey.create();
            try {
                writeNew(made.pem(NO_PHRASE), file);
                return made;
            } catch (FileAlreadyExistsException e) {
                // Another process was first; its key counts.
                return read(file, phrase);
            }
        }
        return read(file, phrase);
    }

    private static SealKey read(Path file, PassPhrase phrase) throws IOException, SealException {
        String pem = pem(file);
        char[] said = SealKey.isProtected(pem) ? phrase.ask(file) : NO_PHRASE;
        try {
            return SealKey.read(pem, said);
        } catch (SealException e) {
            throw new SealException(file + ": " + e.getMessage(), e);
        } finally {
            Arrays.fill(said, ' ');
        }
    }

    /** The text of a key's file. */
    public static String pem(Path file) throws IOException, SealException {
        if (Files.size(file) > LARGEST_KEY_BYTES) {
            throw new SealException(file + " is larger than any key");
        }
        return Files.readString(file, StandardCharsets.ISO_8859_1);
    }

    /**
     * Writes a key into a new file.
     *
     * @throws FileAlreadyExistsException where there is one
     */
    public static void writeNew(String pem, Path file) throws IOException {
        Files.createFile(file, onlyOwner());
        Files.writeString(file, pem, StandardOpenOption.WRITE, StandardOpenOption.SYNC);
    }

    /** Writes a key in the place of the one in a file, in one step. */
    public static void replace(String pem, Path file) throws IOException {
        Path part = file.resolveSibling(file.getFileName() + ".part");
        Files.deleteIfExists(part);
        writeNew(pem, part);
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    }

    private static FileAttribute<?>[] onlyOwner() {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }

    /** Files as parts of a seal, by their names without folders. */
    public static List<SealedPart> parts(List<Path> files) throws IOException {
        List<SealedPart> parts = new ArrayList<>();
        for (Path file : files) {
            parts.add(part(file));
        }
        return parts;
    }

    private static SealedPart part(Path file) throws IOException {
        MessageDigest digest = HashTree.sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return new SealedPart(FILE + file.getFileName(), digest.digest());
    }

    /** The files that a seal names, as far as they lie beside its own file. */
    public static List<SealedPart> beside(Seal seal, Path sealFile) throws IOException {
        List<SealedPart> parts = new ArrayList<>();
        Path folder = sealFile.toAbsolutePath().getParent();
        if (folder == null) {
            return parts;
        }
        // The folder is asked what it holds: a name out of a seal is never made a path.
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, Files::isRegularFile)) {
            for (Path file : files) {
                String name = FILE + file.getFileName();
                if (seal.parts().stream().anyMatch(p -> p.name().equals(name))) {
                    parts.add(part(file));
                }
            }
        }
        return parts;
    }

    /** Whether a part's name is that of a file beside the seal rather than of something of the session. */
    public static boolean isFile(String name) {
        return name.startsWith(FILE);
    }

    public static void write(Seal seal, Path file) throws IOException {
        Files.writeString(file, SealText.write(seal));
    }

    /** @throws SealException where it is no seal, or too large for one */
    public static Seal read(Path file) throws IOException, SealException {
        if (Files.size(file) > SealText.LARGEST_BYTES) {
            throw new SealException(file + " is larger than any seal");
        }
        return SealText.read(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
    }

    /** A review in a file. */
    public static Review review(Path file) throws IOException, SealException {
        if (Files.size(file) > ReviewText.LARGEST_BYTES) {
            throw new SealException(file + " is larger than any review");
        }
        return ReviewText.read(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
    }
}
