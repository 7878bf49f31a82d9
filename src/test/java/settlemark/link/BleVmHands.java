package settlemark.link;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.freedesktop.dbus.DBusPath;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;

/** Display and keys of a simulated probe while it is paired: says yes, and what it showed or was asked. */
final class BleVmHands implements PairingPerson, AutoCloseable {
    private static final String AGENTS = "org.bluez.AgentManager1";
    private static final DBusPath PATH = new DBusPath("/settlemark/agent");

    private final BleCentral central;
    private final List<String> asked = new CopyOnWriteArrayList<>();
    private final CompletableFuture<Integer> entered = new CompletableFuture<>();

    /** @param capability what it has, as the Bluetooth service calls it, such as {@code DisplayOnly} */
    BleVmHands(String bus, String capability) throws LinkException {
        this.central = new BleCentral(bus, Fixtures.THREADS, BleSettings.USUAL);
        try {
            central.ready();
            central.export(PATH.getPath(), new BleAgent(central.objects(), this));
            central.call("/org/bluez", AGENTS, "RegisterAgent", "os", PATH, capability);
            central.call("/org/bluez", AGENTS, "RequestDefaultAgent", "o", PATH);
        } catch (BleFault | BluezError e) {
            throw new LinkException("no agent for the probe's side: " + e.getMessage(), e);
        }
    }

    List<String> asked() {
        return asked;
    }

    void enter(int number) {
        entered.complete(number);
    }

    @Override
    public boolean confirm(String probe, int number) {
        asked.add("confirm " + number);
        return true;
    }

    @Override
    public boolean allow(String probe) {
        asked.add("allow");
        return true;
    }

    @Override
    public OptionalInt passkey(String probe) {
        asked.add("passkey");
        try {
            return OptionalInt.of(entered.get(20, TimeUnit.SECONDS));
        } catch (InterruptedException | ExecutionException | TimeoutException e) {
            asked.add("nothing was entered: " + Optional.ofNullable(e.getMessage()));
            return OptionalInt.empty();
        }
    }

    @Override
    public void show(String probe, int number) {
        asked.add("show " + number);
    }

    @Override
    public void brokenOff() {
        asked.add("broken off");
    }

    @Override
    public void close() {
        central.close();
    }
}
