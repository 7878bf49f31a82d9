package settlemark.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.cli.Program;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/**
 * Holds a probe's name to the device that it was the last time. The system numbers its ports anew each time that a plug
 * goes in, so a port's name alone would sooner or later put one gauge's readings under another's name.
 */
final class ProbeBinding {
    /** Behind the path where several probes share a Modbus line. */
    private static final Pattern UNIT = Pattern.compile("@[0-9]{1,9}$");

    private ProbeBinding() {}

    /**
     * The probes of a log, each with what stays the same of the device at its port.
     *
     * @param said hears which roles were remembered
     * @throws LinkException where a port has no device, or for all probes at once that are another device than the last
     *     time and are not said to be
     */
    static List<ProbeSetup> setups(Program.Log request, Hosts hosts, SessionStore store, Consumer<String> said)
            throws LinkException, StoreException {
        RememberedRoles remembered = new RememberedRoles(request, store, said);
        List<ProbeSetup> setups = new ArrayList<>();
        List<String> objections = new ArrayList<>();
        for (Program.Probe probe : request.probes()) {
            ProbeAddress address = probe.address();
            ProbeHost host = hosts.of(address);
            String now = host.identity(address);
            setups.add(new ProbeSetup(probe.name(), address, probe.profile(), remembered.of(probe, now), now));
            String before = store.lastIdentity(probe.name());
            if (isAnother(before, now) && !request.anotherDevice().contains(probe.name())) {
                objections.add(objection(probe, before, now, elsewhere(before, host)));
            }
        }
        if (!objections.isEmpty()) {
            throw new LinkException(String.join(System.lineSeparator(), objections));
        }
        return setups;
    }

    /** False where nothing is known of either: then the port's name is all there is. */
    static boolean isAnother(String before, String now) {
        return !before.isEmpty() && !now.isEmpty() && !before.equals(now);
    }

    /** @throws LinkException where another device is now at the place of one with which a job began */
    static void requireSame(List<ProbeSetup> probes, Hosts hosts) throws LinkException {
        for (ProbeSetup probe : probes) {
            String now = hosts.of(probe.address()).identity(probe.address());
            if (isAnother(probe.identity(), now)) {
                throw new LinkException(probe.name() + " was " + probe.identity() + ", and at "
                        + probe.address().words() + " is now " + now + ": plug the former one in where it was");
            }
        }
    }

    /** A host that cannot say what is in reach only makes the remedy less exact. */
    private static Optional<String> elsewhere(String identity, ProbeHost host) {
        try {
            return host.found().stream()
                    .filter(f -> f.identity().equals(identity))
                    .map(f -> f.address().path())
                    .findFirst();
        } catch (LinkException e) {
            return Optional.empty();
        }
    }

    static String objection(Program.Probe probe, String before, String now, Optional<String> elsewhere) {
        if (probe.address().scheme().equals(ProbeAddress.BLE)) {
            return "probe " + probe.name() + " was " + before + " the last time, and now " + now
                    + " is named: name the former one, or say --another-device " + probe.name()
                    + " where another device is meant";
        }
        Matcher unit = UNIT.matcher(probe.port());
        String suffix = unit.find() ? unit.group() : "";
        String port = probe.port().substring(0, probe.port().length() - suffix.length());
        String remedy = elsewhere
                .map(path -> before + " is at " + path + ": say --probe " + probe.name() + "=" + path + suffix + ", or")
                .orElse(before + " is at no port in reach: plug it in where it was, or say");
        return "probe " + probe.name() + " was " + before + " the last time, but at " + port + " is now " + now
                + ": the ports may have changed their numbers. " + remedy + " --another-device "
                + probe.name() + " where another device is meant";
    }
}
