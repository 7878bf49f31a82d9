package settlemark.link;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;

/** The virtual machine as its scenarios use it: this program listening on hci0 and hci3, simulated probes on hci1 and hci2. */
final class BleVmBench implements AutoCloseable {
    private static final Pattern BROKEN = Pattern.compile("BUG:|Kernel panic|Oops");

    final BleHost host;
    final String bus;
    private final Path shell;
    private final Process peer;
    private final BufferedReader answers;
    private final PrintWriter commands;

    BleVmBench(int port, Path shell) throws IOException {
        this.bus = "tcp:host=127.0.0.1,port=" + port;
        this.shell = shell;
        this.host = new BleHost(Fixtures.THREADS, Optional.of("hci0"), bus, BleSettings.USUAL);
        this.peer = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "settlemark.link.BleVmPeer",
                        bus)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        this.answers = new BufferedReader(new InputStreamReader(peer.getInputStream(), StandardCharsets.UTF_8));
        this.commands = new PrintWriter(new OutputStreamWriter(peer.getOutputStream(), StandardCharsets.UTF_8), true);
    }

    /** Has the simulated probes do something; returns what they answered. */
    synchronized String peer(String command) {
        commands.println(command);
        try {
            String answer = answers.readLine();
            if (answer == null || !answer.startsWith("ok")) {
                throw new AssertionError("the simulated probes did not " + command + ": " + answer);
            }
            return answer.substring(2).strip();
        } catch (IOException e) {
            throw new AssertionError("the simulated probes are gone", e);
        }
    }

    /** Runs a line in the guest's shell and returns what it printed. */
    String guest(String line) {
        StringBuilder said = new StringBuilder();
        try (SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX)) {
            channel.connect(UnixDomainSocketAddress.of(shell));
            channel.write(ByteBuffer.wrap((line + "\n").getBytes(StandardCharsets.UTF_8)));
            ByteBuffer buffer = ByteBuffer.allocate(4096);
            while (!said.toString().contains("rc=") && channel.read(buffer) >= 0) {
                said.append(StandardCharsets.UTF_8.decode(buffer.flip()));
                buffer.clear();
            }
        } catch (IOException e) {
            throw new AssertionError("the guest's shell did not run " + line, e);
        }
        return said.toString();
    }

    /** Where a run leaves its files. */
    Path folder() {
        return java.util.Objects.requireNonNull(shell.toAbsolutePath().getParent());
    }

    /** Whether the machine itself has failed, and not the program: QEMU has ended or the kernel has. */
    boolean isBroken() {
        Path folder = folder();
        try {
            String console = Files.readString(folder.resolve("console.log"), StandardCharsets.ISO_8859_1);
            long pid =
                    Long.parseLong(Files.readString(folder.resolve("qemu.pid")).strip());
            return BROKEN.matcher(console).find()
                    || ProcessHandle.of(pid).filter(ProcessHandle::isAlive).isEmpty();
        } catch (IOException e) {
            throw new AssertionError("the guest's files are gone from " + folder, e);
        }
    }

    /** The probe's side ends the connection, as one that is switched off does. */
    void disconnectFrom(String adapter) throws BluezError {
        host.central()
                .call(Bluez.devicePath("/org/bluez/" + adapter, addressOf("hci0")), Bluez.DEVICE, "Disconnect", "");
    }

    /** Switches an adapter, as another program would. */
    void power(String adapter, boolean on) {
        try {
            host.central()
                    .call(
                            "/org/bluez/" + adapter,
                            Bluez.PROPERTIES,
                            "Set",
                            "ssv",
                            Bluez.ADAPTER,
                            "Powered",
                            new Variant<>(on));
        } catch (BluezError e) {
            throw new AssertionError(adapter + " could not be switched", e);
        }
    }

    /** Removes what an adapter knows of all others. */
    void forgetOn(String adapter) {
        for (String device : host.central().objects().paths(Bluez.DEVICE, "/org/bluez/" + adapter)) {
            try {
                host.central().call("/org/bluez/" + adapter, Bluez.ADAPTER, "RemoveDevice", "o", new DBusPath(device));
            } catch (BluezError e) {
                // It went by itself meanwhile.
                continue;
            }
        }
    }

    /** Devices that an adapter is paired with. */
    List<String> bondedOn(String adapter) {
        BluezObjects objects = host.central().objects();
        return objects.paths(Bluez.DEVICE, "/org/bluez/" + adapter).stream()
                .filter(d -> BluezValues.isTrue(objects.property(d, Bluez.DEVICE, "Paired")))
                .toList();
    }

    String addressOf(String adapter) {
        try {
            host.central().ready();
        } catch (BleFault fault) {
            throw new AssertionError(fault.words(), fault);
        }
        return host.central().adapterName("/org/bluez/" + adapter);
    }

    ProbeLink open(String adapter, String profile, LinkListener heard) throws LinkException {
        return open(adapter, profile, heard, "hci0");
    }

    /** @param via the adapter that listens; a virtual one holds a single connection, for it numbers all of them alike */
    ProbeLink open(String adapter, String profile, LinkListener heard, String via) throws LinkException {
        return host.open(
                new ProbeAddress("ble", addressOf(adapter) + "@" + via),
                BleVmProfiles.of(profile),
                Fixtures.ticker(),
                heard);
    }

    ProbeLink open(BleHost by, String adapter, String profile, LinkListener heard) throws LinkException {
        return by.open(
                new ProbeAddress("ble", addressOf(adapter)), BleVmProfiles.of(profile), Fixtures.ticker(), heard);
    }

    @Override
    public void close() {
        host.close();
        peer.destroy();
    }
}
