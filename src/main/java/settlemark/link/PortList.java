package settlemark.link;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The serial ports of this computer. Asking the library for them touches every driver, so it is done once for each change
 * of the device folder and remembered in between.
 */
final class PortList {
    /**
     * A port as the library describes it.
     *
     * @param path of its node
     * @param description what its maker calls it
     * @param vendor USB vendor number
     * @param product USB product number
     */
    record Port(String path, String description, Optional<Integer> vendor, Optional<Integer> product) {}

    private final Path dev;
    private final Supplier<List<Port>> enumeration;
    private List<String> seen = List.of();
    private List<Port> ports = List.of();
    private boolean enumerated;

    PortList(Path dev, Supplier<List<Port>> enumeration) {
        this.dev = dev;
        this.enumeration = enumeration;
    }

    /** USB ports first. */
    synchronized List<Port> ports() {
        List<String> now = nodes();
        if (!enumerated || !now.equals(seen)) {
            ports = enumeration.get();
            seen = now;
            enumerated = true;
        }
        return ports;
    }

    /** A node that went and came back is another one, though it has the same name. */
    private List<String> nodes() {
        List<String> found = new ArrayList<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(dev, "{tty,rfcomm,cu.}*")) {
            for (Path entry : entries) {
                found.add(entry + " " + key(entry));
            }
        } catch (IOException e) {
            return List.of();
        }
        found.sort(null);
        return found;
    }

    private static String key(Path node) {
        try {
            return String.valueOf(
                    Files.readAttributes(node, BasicFileAttributes.class).fileKey());
        } catch (IOException e) {
            return "gone";
        }
    }

    /** Through the serial library, which must be loaded. */
    static List<Port> ofLibrary() {
        List<SerialPort> ports = new ArrayList<>(List.of(SerialPort.getCommPorts()));
        ports.sort(Comparator.comparing((SerialPort p) -> p.getVendorID() < 0)
                .thenComparing(SerialPort::getSystemPortPath));
        return ports.stream()
                .map(p -> new Port(
                        p.getSystemPortPath(),
                        p.getPortDescription() + " (" + p.getSystemPortName() + ")",
                        number(p.getVendorID()),
                        number(p.getProductID())))
                .toList();
    }

    private static Optional<Integer> number(int said) {
        return said < 0 ? Optional.empty() : Optional.of(said);
    }
}
