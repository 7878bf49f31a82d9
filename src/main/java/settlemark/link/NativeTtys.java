package settlemark.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortDataListener;
import com.fazecast.jSerialComm.SerialPortEvent;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Path;
import settlemark.profile.SerialLine;
import settlemark.session.LinkException;

/** Serial devices through the serial library. */
final class NativeTtys implements TtyOpener {
    /** The library rounds down to tenths of a second, so this is its shortest wait. */
    private static final int READ_WAIT_MILLIS = 100;

    /** Error numbers of Linux, as errno(3) names them; the library hands them through. */
    private static final int ENOENT = 2;

    private static final int EIO = 5;
    private static final int ENXIO = 6;
    private static final int EAGAIN = 11;
    private static final int EACCES = 13;
    private static final int EBUSY = 16;
    private static final int ENODEV = 19;
    private static final int EINVAL = 22;
    private static final int ENOTTY = 25;

    private final PortUsers users =
            new PortUsers(Path.of("/proc"), ProcessHandle.current().pid());

    @Override
    public Tty open(Path node, SerialLine line) throws LinkException {
        NativeLibrary.load();
        SerialPort port = portAt(node);
        LineSettings.apply(line, port);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_WAIT_MILLIS, 0);
        // What waits in the port came before the session; its time is unknown.
        port.flushIOBuffers();
        int error = openPort(port);
        if (error != 0) {
            throw new LinkException(words(error, node, line));
        }
        NativeTty tty = new NativeTty(port, new Disconnection());
        port.addDataListener(tty.disconnection);
        return tty;
    }

    /** A pseudo terminal is left out: whoever made it keeps it open. */
    @Override
    public String alsoUsedBy(Path node) {
        return node.startsWith("/dev/pts") ? "" : users.of(node);
    }

    @Override
    public void beforeShutdown(Thread thread) {
        SerialPort.addShutdownHook(thread);
    }

    /** Returns the error number, 0 where it is open. The library keeps the last error for all ports together. */
    private static int openPort(SerialPort port) {
        synchronized (NativeTtys.class) {
            return port.openPort(0) ? 0 : Math.max(1, port.getLastErrorCode());
        }
    }

    private static SerialPort portAt(Path node) throws LinkException {
        try {
            return SerialPort.getCommPort(node.toString());
        } catch (SerialPortInvalidPortException e) {
            throw new LinkException("there is no serial port " + node + ": plug the gauge in and check the name", e);
        }
    }

    String words(int error, Path node, SerialLine line) {
        return switch (error) {
            case ENOENT, EAGAIN, EBUSY -> taken(node);
            case EACCES -> denied(node);
            case ENOTTY -> node + " is not a serial port: give a device such as /dev/ttyUSB0";
            case EINVAL ->
                node + " does not take " + LineSettings.words(line) + ": check the profile's serial settings";
            case EIO, ENXIO, ENODEV -> "no device answers at " + node + ": plug the gauge in, or choose another port";
            default -> node + " cannot be opened (system error " + error + "): unplug it, plug it in and try again";
        };
    }

    /** Error 2 is the library's own for a port that is open here already: nodes are checked before. */
    private String taken(Path node) {
        String others = users.of(node);
        return others.isEmpty()
                ? node + " is taken, by this program or another: close what uses it and try again"
                : node + " is taken by " + others + ": close it and try again";
    }

    private static String denied(Path node) {
        try {
            return PermissionAdvice.of(node).words(Accounts.ofThisProcess());
        } catch (IOException | UnsupportedOperationException e) {
            return "permission denied for " + node + ": ask the administrator for the right to use it";
        }
    }

    /** Hears that the device is gone, once. */
    private static final class Disconnection implements SerialPortDataListener {
        private volatile boolean heard;

        @Override
        public int getListeningEvents() {
            return SerialPort.LISTENING_EVENT_PORT_DISCONNECTED;
        }

        @Override
        public void serialEvent(SerialPortEvent event) {
            heard = true;
            // The library says it again and again, hundreds of thousands of times a second, to whoever returns from
            // here.
            throw new IllegalStateException("the device is gone");
        }
    }

    private record NativeTty(SerialPort port, Disconnection disconnection) implements Tty {
        @Override
        public boolean disconnected() {
            return disconnection.heard;
        }

        @Override
        public int read(byte[] buffer) {
            return port.readBytes(buffer, buffer.length);
        }

        @Override
        public int write(byte[] bytes, int offset, int length) {
            return port.writeBytes(bytes, length, offset);
        }

        @Override
        public int awaitingWrite() {
            return Math.max(0, port.bytesAwaitingWrite());
        }

        @Override
        public void release() {
            port.flushIOBuffers();
            // A blocked write looks again only when the line is set anew; emptying the buffers alone does not wake it.
            port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_WAIT_MILLIS, 0);
        }

        @Override
        public void close() {
            port.closePort();
        }
    }
}
