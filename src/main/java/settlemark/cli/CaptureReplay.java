package settlemark.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import settlemark.profile.ByteText;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Secrets;
import settlemark.session.CaptureHeader;
import settlemark.session.CaptureProblem;
import settlemark.session.CaptureSink;
import settlemark.session.LinkChange;
import settlemark.session.SessionEvent;

/** Sends a capture through profiles again. */
final class CaptureReplay implements CaptureSink {
    private static final String BLE = "ble:";

    private final CommandSpec command;
    private final String file;
    private final Choices choices;
    private final SampleTable table;
    private final long tellRejections;
    private final PrintWriter err;
    private final List<ProbeReplay> probes = new ArrayList<>();

    /**
     * What the person said of probes, by their names.
     *
     * @param profiles the other probes keep the profile that they were captured with
     * @param keys of protected devices
     * @param addresses of protected devices, beside what the capture says
     */
    record Choices(Map<String, Profile> profiles, Map<String, ByteText> keys, Map<String, ByteText> addresses) {
        Choices {
            profiles = Map.copyOf(profiles);
            keys = Map.copyOf(keys);
            addresses = Map.copyOf(addresses);
        }

        Set<String> names() {
            Set<String> names = new TreeSet<>(profiles.keySet());
            names.addAll(keys.keySet());
            names.addAll(addresses.keySet());
            return names;
        }
    }

    CaptureReplay(CommandSpec command, String file, Choices choices, SampleTable table, long tellRejections) {
        this.command = command;
        this.file = file;
        this.choices = choices;
        this.table = table;
        this.tellRejections = tellRejections;
        this.err = command.commandLine().getErr();
    }

    @Override
    public void begun(CaptureHeader header) {
        List<String> names =
                header.probes().stream().map(CaptureHeader.Probe::name).toList();
        for (String name : choices.names()) {
            if (!names.contains(name)) {
                throw new ParameterException(
                        command.commandLine(),
                        "an option names \"" + name + "\", which " + file + " does not hold; its probes are " + names);
            }
        }
        for (CaptureHeader.Probe probe : header.probes()) {
            Profile profile = profile(probe);
            if (!probe.digest().isEmpty() && !probe.digest().equals(profile.digest())) {
                err.println(probe.name() + ": captured with " + probe.profile() + " "
                        + ProbeReplay.digest(probe.digest()) + ", read now with " + profile.id() + " "
                        + ProbeReplay.digest(profile.digest()));
            }
            probes.add(new ProbeReplay(probe.name(), profile, secrets(probe), table, err, tellRejections));
        }
    }

    private Secrets secrets(CaptureHeader.Probe probe) {
        ByteText address = choices.addresses().get(probe.name());
        if (address == null) {
            String known = probe.address().startsWith(BLE) ? probe.address().substring(BLE.length()) : "";
            address = SecretFile.isAddress(known) ? SecretFile.address(command, known) : ByteText.EMPTY;
        }
        return new Secrets(address, choices.keys().getOrDefault(probe.name(), ByteText.EMPTY));
    }

    private Profile profile(CaptureHeader.Probe probe) {
        return Optional.ofNullable(choices.profiles().get(probe.name()))
                .or(() -> ProfileLibrary.find(probe.profile()))
                .orElseThrow(() -> new ParameterException(
                        command.commandLine(),
                        (probe.profile().isEmpty()
                                        ? file + " does not say which profile probe " + probe.name() + " has"
                                        : "profile \"" + probe.profile() + "\" of probe " + probe.name()
                                                + " does not come with the program")
                                + "; say --profile " + probe.name() + "=FILE"));
    }

    @Override
    public void heard(SessionEvent event) {
        if (event instanceof SessionEvent.Bytes bytes) {
            probes.get(bytes.probe()).bytes(bytes.chunk());
        } else if (event instanceof SessionEvent.Link link
                && (link.change() == LinkChange.LOST || link.change() == LinkChange.OVERRUN)) {
            probes.get(link.probe()).lost();
        }
    }

    @Override
    public void problem(CaptureProblem problem) {
        err.println(file + ":" + problem);
    }

    /** The capture has ended: frames that only silence ends are whole now. */
    void finish() {
        probes.forEach(ProbeReplay::finish);
    }

    /** A line for each probe. */
    void summary() {
        probes.forEach(probe -> err.println(probe.summary()));
    }
}
