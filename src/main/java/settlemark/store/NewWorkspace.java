package settlemark.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.util.List;
import java.util.Set;
import settlemark.session.StoreException;

/** A workspace that is being made, under another name in the same folder until it is whole. Never overwrites anything. */
final class NewWorkspace implements AutoCloseable {
    private static final List<String> SIDECARS = List.of("-wal", "-shm", "-journal");

    private final Path target;
    private final Path part;
    private final Failures failures;

    private NewWorkspace(Path target, Path part) {
        this.target = target;
        this.part = part;
        this.failures = new Failures(target);
    }

    /** @param to must not be there, and its folder must */
    static NewWorkspace at(Path to) throws StoreException {
        Path named = to.toAbsolutePath().normalize();
        Failures failures = new Failures(named);
        if (Files.exists(named, LinkOption.NOFOLLOW_LINKS)) {
            throw failures.fault("it is there already and is never overwritten; name a new file with --to");
        }
        Path target = Opening.resolve(WorkspacePlace.chosen(named));
        for (String sidecar : SIDECARS) {
            Path left = beside(target, sidecar);
            if (Files.exists(left, LinkOption.NOFOLLOW_LINKS)) {
                throw failures.fault(
                        "beside it lies " + left + ", which belongs to a former file of that name and would"
                                + " be taken for a part of the new one; move it away, or name another file with --to");
            }
        }
        return under(target);
    }

    /** Takes the place of a file that is there. */
    static NewWorkspace under(Path target) throws StoreException {
        Path folder = target.getParent();
        try {
            Path part = Files.createTempFile(folder, "." + target.getFileName() + ".", ".part");
            return new NewWorkspace(target, part);
        } catch (IOException e) {
            throw new Failures(target)
                    .fault(
                            "no file can be made in its folder " + folder + " (" + e + "); make the folder writable or"
                                    + " free space",
                            e);
        }
    }

    private static Path beside(Path file, String end) {
        return file.resolveSibling(file.getFileName() + end);
    }

    /** Where it is being made: an empty file to begin with. */
    Path part() {
        return part;
    }

    Failures failures() {
        return failures;
    }

    /** Gives it its name, on the disk when it returns, unless another file has got that name meanwhile. */
    Path appear(Path like) throws StoreException {
        try {
            ready(like);
            try {
                // A link, unlike a move, never overwrites.
                Files.createLink(target, part);
            } catch (UnsupportedOperationException | FileSystemException e) {
                if (e instanceof FileAlreadyExistsException) {
                    throw e;
                }
                Files.move(part, target);
            }
            Opening.syncFolder(target);
            return target;
        } catch (IOException e) {
            throw failures.fault("it is whole, and cannot be given its name (" + e + "); name another file", e);
        }
    }

    /** Puts it in the place of the file of that name, in one step. */
    void replace() throws StoreException {
        try {
            ready(target);
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            Opening.syncFolder(target);
        } catch (IOException e) {
            throw failures.fault("its new form cannot take its place (" + e + "); it is as it was", e);
        }
    }

    private void ready(Path like) throws IOException {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        try {
            Set<PosixFilePermission> rights = Files.getPosixFilePermissions(like);
            Files.setPosixFilePermissions(part, rights);
        } catch (UnsupportedOperationException e) {
            // a system without them
        }
    }

    /** Removes what has not got its name. */
    @Override
    public void close() {
        for (String end : List.of("", "-wal", "-shm", "-journal")) {
            try {
                Files.deleteIfExists(beside(part, end));
            } catch (IOException e) {
                // its name says that it is but a part
            }
        }
    }
}
