package settlemark.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Which file system a path lies on. SQLite's write-ahead log needs shared memory and locks that network and shared
 * folders do not give (sqlite.org/wal.html, "all processes must be on the same host"), so those are refused.
 *
 * @param mounts in the kernel's order; of two on the same point the later one is seen
 */
record MountTable(List<Mount> mounts) {
    private static final Path KERNEL_TABLE = Path.of("/proc/self/mounts");

    private static final Set<String> REMOTE = Set.of(
            "nfs",
            "nfs3",
            "nfs4",
            "cifs",
            "smb",
            "smb2",
            "smb3",
            "smbfs",
            "ncpfs",
            "afs",
            "afpfs",
            "coda",
            "ceph",
            "glusterfs",
            "lustre",
            "gfs",
            "gfs2",
            "ocfs2",
            "beegfs",
            "9p",
            "virtiofs",
            "vboxsf",
            "prl_fs",
            "vmhgfs",
            "davfs",
            "webdav",
            "fuse");

    /** File systems in user space that keep their data on this machine. Every other one is taken for remote. */
    private static final Set<String> LOCAL_FUSE = Set.of(
            "fuse.ntfs-3g",
            "fuse.exfat",
            "fuse.fuse-overlayfs",
            "fuse.bindfs",
            "fuse.mergerfs",
            "fuse.encfs",
            "fuse.gocryptfs",
            "fuse.cryfs");

    MountTable {
        mounts = List.copyOf(mounts);
    }

    /**
     * A mounted file system.
     *
     * @param point where
     * @param type such as {@code ext4}
     * @param options such as {@code noexec}
     */
    record Mount(Path point, String type, Set<String> options) {
        /** Whether a workspace on it could be damaged by its locks. */
        boolean remote() {
            String lower = type.toLowerCase(Locale.ROOT);
            return REMOTE.contains(lower) || lower.startsWith("fuse.") && !LOCAL_FUSE.contains(lower);
        }

        boolean forbidsExecution() {
            return options.contains("noexec");
        }
    }

    /** The machine's own table; empty where the system has none. */
    static MountTable ofThisMachine() {
        try {
            return parse(Files.readString(KERNEL_TABLE, StandardCharsets.UTF_8));
        } catch (IOException e) {
            return new MountTable(List.of());
        }
    }

    /** Reads the text of a table as fstab(5) describes it. */
    static MountTable parse(String text) {
        List<Mount> mounts = new ArrayList<>();
        for (String line : text.lines().toList()) {
            String[] words = line.split(" ", -1);
            if (words.length >= 4 && words[1].startsWith("/")) {
                mounts.add(new Mount(Path.of(unescape(words[1])), words[2], Set.of(words[3].split(",", -1))));
            }
        }
        return new MountTable(mounts);
    }

    /** The file system of an absolute path without links; where the table does not know it, the platform is asked. */
    Optional<Mount> of(Path path) {
        Optional<Mount> deepest = mounts.stream()
                .filter(m -> path.startsWith(m.point))
                // of equals the last: what was mounted later hides what is below
                .reduce((a, b) -> Comparator.comparingInt((Mount m) -> m.point.getNameCount())
                                        .compare(a, b)
                                > 0
                        ? a
                        : b);
        return deepest.isPresent() ? deepest : platform(path);
    }

    private static Optional<Mount> platform(Path path) {
        if (path.toString().startsWith("\\\\")) {
            return Optional.of(new Mount(path, "smb", Set.of()));
        }
        try {
            return Optional.of(new Mount(path, Files.getFileStore(path).type(), Set.of()));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** The kernel writes blanks and backslashes in a path as three octal digits. */
    private static String unescape(String word) {
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < word.length(); i++) {
            char c = word.charAt(i);
            if (c == '\\' && i + 3 < word.length() && isOctal(word, i + 1)) {
                plain.append((char) Integer.parseInt(word.substring(i + 1, i + 4), 8));
                i += 3;
            } else {
                plain.append(c);
            }
        }
        return plain.toString();
    }

    private static boolean isOctal(String word, int from) {
        return word.substring(from, from + 3).chars().allMatch(c -> c >= '0' && c <= '7');
    }
}
