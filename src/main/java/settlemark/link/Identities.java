package settlemark.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Which device is behind a node: {@code usb:VENDOR:PRODUCT:SERIAL}, with {@code :INTERFACE} for the further ports of one
 * device, as Linux gives it below {@code /sys/class/tty}. A device without a serial number, or with one that another has
 * too, goes by its socket: {@code path:} and the name below {@code serial/by-path}. Empty where nothing is known.
 */
final class Identities {
    private static final String USB = "usb:";
    /** From the port up to the USB device; a hub is above it. */
    private static final int LEVELS = 5;

    private final Path ttys;
    private final DeviceNodes nodes;

    /** @param ttys the folder with an entry for each tty, {@code /sys/class/tty} in life */
    Identities(Path ttys, DeviceNodes nodes) {
        this.ttys = ttys;
        this.nodes = nodes;
    }

    String of(Path node) {
        Path name = node.getFileName();
        String usb = name == null ? "" : usb(name.toString());
        if (!usb.isEmpty() && bearers(usb).size() == 1) {
            return usb;
        }
        return nodes.socketLink(node).map(link -> "path:" + link.getFileName()).orElse("");
    }

    /** Whether a device is found by its identity alone, whatever its node is called. */
    static boolean finds(String identity) {
        return identity.startsWith(USB);
    }

    /** Where the device is now; empty where it is not there, or where two say that they are it. */
    Optional<Path> nodeOf(String identity) {
        List<String> bearers = bearers(identity);
        return bearers.size() == 1 ? Optional.of(nodes.named(bearers.get(0))) : Optional.empty();
    }

    private List<String> bearers(String usb) {
        List<String> found = new ArrayList<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(ttys)) {
            for (Path entry : entries) {
                String name = entry.getFileName().toString();
                if (usb(name).equals(usb)) {
                    found.add(name);
                }
            }
        } catch (IOException e) {
            return List.of();
        }
        return found;
    }

    private String usb(String name) {
        Path at;
        try {
            at = ttys.resolve(name).resolve("device").toRealPath();
        } catch (IOException e) {
            return "";
        }
        String port = "";
        for (int level = 0; level < LEVELS && at != null; level++, at = parent(at)) {
            String said = text(at.resolve("bInterfaceNumber"));
            port = said.isEmpty() || said.equals("00") ? port : ":" + said;
            String vendor = text(at.resolve("idVendor"));
            if (!vendor.isEmpty()) {
                String serial = text(at.resolve("serial"));
                return serial.isEmpty() ? "" : USB + vendor + ":" + text(at.resolve("idProduct")) + ":" + serial + port;
            }
        }
        return "";
    }

    private static @Nullable Path parent(Path at) {
        return at.getParent();
    }

    private static String text(Path file) {
        try {
            return Files.exists(file)
                    ? Files.readString(file, StandardCharsets.UTF_8).strip()
                    : "";
        } catch (IOException e) {
            return "";
        }
    }
}
