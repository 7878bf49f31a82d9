package settlemark.seal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
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
        for (SealedPart sealed : seal.parts()) {
            Path file = sealFile.resolveSibling(Path.of(nameOf(sealed)).getFileName());
            if (isFile(sealed) && Files.isRegularFile(file)) {
                parts.add(part(file));
            }
        }
        return parts;
    }

    /** Whether a part is a file beside the seal rather than something of the session. */
    public static boolean isFile(SealedPart part) {
        return part.name().startsWith(FILE);
    }

    private static String nameOf(SealedPart part) {
        return isFile(part) ? part.name().substring(FILE.length()) : "none";
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
