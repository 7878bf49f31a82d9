package settlemark.seal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;

/** Seals, their key and the sealed files, as they lie in folders. */
public final class SealFiles {
    private static final String FILE = "file ";
    private static final char[] NO_PHRASE = {};

    private SealFiles() {}

    /**
     * The key of a workspace; made on first use, readable for its owner only where the file system can say so.
     *
     * @throws SealException where the file holds no key, or one that a pass phrase protects
     */
    public static SealKey key(Path file) throws IOException, SealException {
        if (!Files.exists(file)) {
            SealKey made = SealKey.create();
            try {
                Files.createFile(file, onlyOwner());
                Files.writeString(file, made.pem(NO_PHRASE), StandardOpenOption.WRITE, StandardOpenOption.SYNC);
                return made;
            } catch (FileAlreadyExistsException e) {
                // Another process was first; its key counts.
                return SealKey.read(Files.readString(file), NO_PHRASE);
            }
        }
        try {
            return SealKey.read(Files.readString(file), NO_PHRASE);
        } catch (SealException e) {
            throw new SealException(file + ": " + e.getMessage(), e);
        }
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
            in.transferTo(java.io.OutputStream.nullOutputStream());
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
}
