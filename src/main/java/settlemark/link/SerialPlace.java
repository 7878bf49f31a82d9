package settlemark.link;

import java.nio.file.Path;
import java.util.concurrent.ThreadFactory;
import settlemark.profile.SerialLine;
import settlemark.session.LinkException;

/**
 * Where a serial device is found, now and after its plug was out, and how its line is set.
 *
 * @param path as the person gave it
 * @param lasting the name to look for where nothing is known of the device
 * @param identity of the device, empty where nothing is known
 * @param line its settings
 * @param nodes where nodes are looked up
 * @param identities where devices are looked up
 * @param opener opens them
 * @param threads makes the threads that write
 */
record SerialPlace(
        String path,
        String lasting,
        String identity,
        SerialLine line,
        DeviceNodes nodes,
        Identities identities,
        TtyOpener opener,
        ThreadFactory threads) {

    /** The device while it is open. */
    record Port(Path node, Tty tty, TimedWriter writer) {
        /** May hang where the driver does. */
        void close() {
            writer.shutdown();
            tty.close();
        }
    }

    /** Finds the device under its own name, not under the number that it had the last time. */
    Port open() throws LinkException {
        Path node = node();
        Tty tty = opener.open(node, line);
        return new Port(node, tty, new TimedWriter(tty, "link-out-" + name(), threads));
    }

    private Path node() throws LinkException {
        if (!Identities.finds(identity)) {
            return nodes.resolve(lasting);
        }
        return identities
                .nodeOf(identity)
                .orElseThrow(() -> new LinkException("the device of " + path + ", " + identity
                        + ", is not plugged in, or two devices have its number: plug it in, and no other like it"));
    }

    boolean present(Port port) {
        return nodes.present(port.node());
    }

    /** Short name for threads and messages, such as {@code ttyUSB0}. */
    String name() {
        Path file = Path.of(path).getFileName();
        return file == null ? path : file.toString();
    }

    String upWords(Port port) {
        String others = opener.alsoUsedBy(port.node());
        return "listening on " + path + " at " + LineSettings.words(line)
                + (others.isEmpty()
                        ? ""
                        : "; " + others + " has this port open too and may take a part of the bytes: close it");
    }

    /** @param soon true where it had been there for seconds only, which has causes of its own */
    String lostWords(boolean soon) {
        String gone = path + " is gone: unplugged, or its other end closed. Waiting for it to come back";
        boolean usb = path.contains("ttyUSB") || path.contains("ttyACM") || path.contains("/by-id/");
        return soon && usb
                ? gone + ". If it goes each time within seconds, brltty or ModemManager may take it:"
                        + " sudo systemctl stop ModemManager, sudo apt remove brltty"
                : gone;
    }

    String backWords(Port port) {
        return path + " is back" + (port.node().toString().equals(path) ? "" : " as " + port.node());
    }
}
