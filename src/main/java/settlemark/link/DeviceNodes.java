package settlemark.link;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import settlemark.session.LinkException;

/**
 * The device nodes below one folder, {@code /dev} in life. A node's number can change each time a plug goes in; the links
 * below {@code serial/by-id} and {@code serial/by-path} stay with the device and its socket.
 */
final class DeviceNodes {
    private static final int FILE_TYPE = 0xF000;
    private static final int CHARACTER_DEVICE = 0x2000;

    private final Path dev;
    private final Predicate<Path> exists;
    private final boolean posix =
            FileSystems.getDefault().supportedFileAttributeViews().contains("unix");

    DeviceNodes(Path dev) {
        this(dev, Files::exists);
    }

    /** @param exists tells whether a node is there */
    DeviceNodes(Path dev, Predicate<Path> exists) {
        this.dev = dev;
        this.exists = exists;
    }

    /** The node behind a path, with all links followed. */
    Path resolve(String path) throws LinkException {
        Path given = Path.of(path);
        if (!posix) {
            return given;
        }
        try {
            Path real = given.toRealPath();
            if (!isCharacterDevice(real)) {
                throw new LinkException(
                        path + " is not a serial port but a file or folder: give a device such as /dev/ttyUSB0");
            }
            return real;
        } catch (IOException e) {
            throw new LinkException(missing(given), e);
        }
    }

    /** True while the node is there; always true where nodes cannot be seen. */
    boolean present(Path node) {
        return !posix || exists.test(node);
    }

    /**
     * The name to look for when a device without an identity comes back: the path itself where it is a link, else the link that stays with
     * the device, else the path.
     */
    String lasting(String path, Path real) {
        if (Files.isSymbolicLink(Path.of(path))) {
            return path;
        }
        return stableLink(real).map(Path::toString).orElse(path);
    }

    /** The node with a name of the system's, such as {@code ttyUSB0}. */
    Path named(String name) {
        return dev.resolve(name);
    }

    Path folder() {
        return dev;
    }

    /**
     * The same for a device without a serial number of its own: its name below {@code serial/by-id} may go to another
     * one of its kind, so its socket is looked for.
     */
    String lastingSocket(String path, Path real) {
        boolean own = Files.isSymbolicLink(Path.of(path)) && !Path.of(path).startsWith(dev.resolve("serial/by-id"));
        return own ? path : socketLink(real).map(Path::toString).orElse(path);
    }

    Optional<Path> stableLink(Path real) {
        return link(real, List.of("serial/by-id", "serial/by-path"));
    }

    /** The link that stays with the socket. */
    Optional<Path> socketLink(Path real) {
        return link(real, List.of("serial/by-path"));
    }

    private Optional<Path> link(Path real, List<String> folders) {
        for (String folder : folders) {
            for (Path link : list(dev.resolve(folder), "*")) {
                if (leadsTo(link, real)) {
                    return Optional.of(link);
                }
            }
        }
        return Optional.empty();
    }

    private String missing(Path given) {
        if (Files.isSymbolicLink(given)) {
            return given + " leads to a device that is gone: plug it in again. " + inReach();
        }
        Path below = dev.resolve(given);
        if (!given.isAbsolute() && Files.exists(below)) {
            return "there is no device " + given + " here: give the whole path, " + below;
        }
        return "there is no device " + given + ": plug the gauge in and check the path. " + inReach();
    }

    private String inReach() {
        List<Path> ports = new ArrayList<>(list(dev.resolve("serial/by-id"), "*"));
        if (ports.isEmpty()) {
            ports.addAll(list(dev, "tty{USB,ACM}*"));
        }
        return ports.isEmpty()
                ? "No USB serial port is in reach now."
                : ports.stream().map(Path::toString).collect(Collectors.joining(", ", "In reach now: ", "."));
    }

    private static boolean isCharacterDevice(Path real) throws IOException {
        return Files.getAttribute(real, "unix:mode", LinkOption.NOFOLLOW_LINKS) instanceof Integer mode
                && (mode & FILE_TYPE) == CHARACTER_DEVICE;
    }

    private static boolean leadsTo(Path link, Path real) {
        try {
            return link.toRealPath().equals(real);
        } catch (IOException e) {
            return false;
        }
    }

    private static List<Path> list(Path folder, String glob) {
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder, glob)) {
            entries.forEach(found::add);
        } catch (IOException e) {
            return List.of();
        }
        found.sort(null);
        return found;
    }
}
