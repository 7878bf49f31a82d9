package settlemark.link;

import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Collectors;

/** The sentences of Bluetooth: what is so, and the remedy. */
final class BleWords {
    private static final String SHORT_TAIL = "-0000-1000-8000-00805f9b34fb";

    private BleWords() {}

    static String noBus(String address) {
        return "Bluetooth needs the system's message bus, and there is none at " + address
                + ": start it (sudo systemctl start dbus). Serial gauges work without it";
    }

    static String busRefused(String address) {
        return "this account may not use the system's message bus at " + address
                + ", which Bluetooth needs: ask whoever looks after this computer. Serial gauges work without it";
    }

    static String noService() {
        return "the Bluetooth service does not run on this computer: install bluez and start it (sudo systemctl start"
                + " bluetooth). Serial gauges work without it";
    }

    static String serviceRefused() {
        return "this account may not use Bluetooth: add it to the group bluetooth (sudo usermod -aG bluetooth $USER),"
                + " then log out and in again";
    }

    static String noAdapter() {
        return "this computer has no Bluetooth adapter: plug one in, or switch the built-in one on";
    }

    static String noSuchAdapter(String wanted, List<String> there) {
        return "there is no Bluetooth adapter " + wanted + ": "
                + (there.isEmpty() ? "none is plugged in" : "there is " + String.join(" and ", there));
    }

    static String blocked(String adapter) {
        return "Bluetooth adapter " + adapter
                + " is blocked: press the flight-mode key, or run rfkill unblock bluetooth. It is taken up again by itself";
    }

    static String off(String adapter) {
        return "Bluetooth adapter " + adapter
                + " is switched off: switch Bluetooth on in the system's settings. It is taken up again by itself";
    }

    static String slept() {
        return "the computer slept, so the radio link ended; it is set up again";
    }

    static String notHeard(String probe) {
        return probe + " is not heard. It may be asleep or switched off: press its button. It may be out of range: move"
                + " nearer. It may be held by a telephone or another computer, which makes it silent: disconnect it there";
    }

    static String brokeOff(String probe, int tries) {
        String first = "the radio link to " + probe + " broke off while it was set up; it is tried again";
        return tries < 5 ? first : first + ". Move nearer, keep metal out of the way, switch a Wi-Fi hotspot off";
    }

    static String busy(String probe) {
        return "another program on this computer is busy with " + probe
                + ": close it, or disconnect the probe in the system's Bluetooth settings";
    }

    static String disconnected(String probe) {
        return probe
                + " has disconnected: it may be out of range, switched off or its battery empty. It is taken up again"
                + " as soon as it is heard";
    }

    static String silent(String probe, double seconds) {
        return String.format(Locale.ROOT, "%s is connected but has sent nothing for %.0f s", probe, seconds);
    }

    static String askedAnew(String probe, double seconds) {
        return silent(probe, seconds) + "; it is asked anew";
    }

    static String unresolved(String probe, long seconds) {
        return probe + " did not tell its services within " + seconds + " s; it is disconnected and tried again";
    }

    static String misfit(String probe, String profile, List<String> missing, List<String> services) {
        return probe + " is another kind of device than profile \"" + profile + "\" describes: it has no "
                + String.join(" and no ", missing) + ", only "
                + (services.isEmpty() ? "no service at all" : "services " + String.join(", ", services))
                + ". Choose the profile that fits it; if its firmware was changed, let it be forgotten and found again";
    }

    static String pairing(String probe) {
        return probe + " gives its values only to a paired computer: pair it first, then open it again";
    }

    static String endedWhenAsked(String probe) {
        return probe + " ends the connection when its values are asked for. It may give them only to a paired computer:"
                + " pair it first, then open it again. Or it is at the edge of its reach: move nearer";
    }

    static String pairedUnasked(String probe) {
        return probe + " was paired by the Bluetooth service without asking anybody, and the bond could not be removed:"
                + " remove it in the system's Bluetooth settings, then pair it here";
    }

    static String refused(String probe, String what, BluezError error) {
        return probe + " refused " + what + " (" + error.getMessage() + "); it is connected anew";
    }

    static String full(String adapter, long links) {
        return "Bluetooth adapter " + adapter + " serves " + links
                + " probes already, which is as many as are sure to lose nothing: disconnect one, or plug in a second"
                + " adapter";
    }

    /** A UUID as people write it: 4 or 8 digits for those of the Bluetooth base. */
    static String uuid(UUID uuid) {
        String text = uuid.toString();
        if (!text.endsWith(SHORT_TAIL)) {
            return text;
        }
        String head = text.substring(0, 8).toUpperCase(Locale.ROOT);
        return head.startsWith("0000") ? head.substring(4) : head;
    }

    static List<String> uuids(List<UUID> uuids) {
        return uuids.stream().map(BleWords::uuid).distinct().sorted().collect(Collectors.toList());
    }

    /** What an error of the service means where nothing more is known; a probe's name or the adapter's. */
    static String general(String who, BluezError error) {
        if (error.is("AccessDenied")) {
            return serviceRefused();
        }
        if (error.name().equals(BluezError.BUS_LOST)) {
            return "the system's message bus has gone, and Bluetooth with it; it is looked for again";
        }
        if (error.is("ServiceUnknown") || error.is("NameHasNoOwner")) {
            return noService();
        }
        return "the Bluetooth service answered for " + who + ": " + error.getMessage() + "; it is tried again";
    }
}
