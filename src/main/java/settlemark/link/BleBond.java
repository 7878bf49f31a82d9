package settlemark.link;

import java.time.Duration;
import java.util.Optional;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;

/** Pairs and forgets. */
final class BleBond {
    private static final String AGENT_PATH = "/settlemark/agent";
    private static final String AGENTS = "org.bluez.AgentManager1";
    /** Long enough for a person to read and type a number. */
    private static final Duration PATIENCE = Duration.ofSeconds(90);

    private final BleCentral central;
    private final Optional<String> adapter;

    BleBond(BleCentral central, Optional<String> adapter) {
        this.central = central;
        this.adapter = adapter;
    }

    void forget(String address) throws LinkException {
        try {
            String path = central.adapter(adapter);
            String device = Bluez.devicePath(path, address);
            if (!central.objects().has(device, Bluez.DEVICE)) {
                throw new LinkException("this computer knows no device " + address + ", so there is nothing to forget");
            }
            central.forget(device);
        } catch (BleFault fault) {
            throw new LinkException(fault.words(), fault);
        } catch (BluezError e) {
            throw new LinkException(BleWords.general(address, e), e);
        }
    }

    void pair(String address, PairingPerson person) throws LinkException {
        BleAgent agent = new BleAgent(central.objects(), person);
        try {
            String path = central.adapter(adapter);
            String device = heard(path, address);
            central.export(AGENT_PATH, agent);
            try {
                central.call(
                        "/org/bluez",
                        AGENTS,
                        "RegisterAgent",
                        "os",
                        new org.freedesktop.dbus.DBusPath(AGENT_PATH),
                        "KeyboardDisplay");
                central.agree(device);
                central.call(device, Bluez.DEVICE, "Pair", PATIENCE, () -> false, "");
            } catch (BluezError e) {
                central.disagree(device);
                throw e;
            } finally {
                withdraw();
            }
        } catch (BleFault fault) {
            throw new LinkException(fault.words(), fault);
        } catch (BluezError e) {
            throw new LinkException(words(address, agent, e), e);
        }
    }

    /** A device is only known to the service while it is heard. */
    private String heard(String path, String address) throws BleFault {
        String device = Bluez.devicePath(path, address);
        BleScan scan = central.scan(path);
        try {
            scan.want(this);
            if (!central.objects()
                    .await(
                            () -> central.objects().has(device, Bluez.DEVICE),
                            central.settings().hear(),
                            () -> false)) {
                throw BleFault.passing(BleWords.notHeard("probe " + address));
            }
            return device;
        } finally {
            scan.leave(this);
        }
    }

    private void withdraw() {
        try {
            central.call("/org/bluez", AGENTS, "UnregisterAgent", "o", new org.freedesktop.dbus.DBusPath(AGENT_PATH));
        } catch (BluezError e) {
            // It ends with the connection at the latest.
            central.unexport(AGENT_PATH);
            return;
        }
        central.unexport(AGENT_PATH);
    }

    private static String words(String address, BleAgent agent, BluezError e) {
        if (e.is("AlreadyExists")) {
            return "probe " + address + " is paired already; forget it first to pair it anew";
        }
        if (agent.hasRefused()) {
            return "probe " + address + " was not paired, as you chose";
        }
        if (e.is("AuthenticationFailed") || e.is("AuthenticationRejected") || e.is("AuthenticationCanceled")) {
            return "probe " + address + " did not agree to the pairing: check the number, and try again";
        }
        return e.name().equals(BluezError.TIME_OUT) || e.is("AuthenticationTimeout")
                ? "the pairing with probe " + address + " took too long: try again"
                : BleWords.general("probe " + address, e);
    }
}
