package settlemark.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.CaptureHeader;
import settlemark.session.CaptureProblem;
import settlemark.session.CaptureSink;
import settlemark.session.LinkChange;
import settlemark.session.SessionEvent;

/** Sends a capture through profiles again. */
final class CaptureReplay implements CaptureSink {
    private final CommandSpec command;
    private final String file;
    private final Map<String, Profile> chosen;
    private final SampleTable table;
    private final long tellRejections;
    private final PrintWriter err;
    private final List<ProbeReplay> probes = new ArrayList<>();

    /** @param chosen profiles by the names of probes; the others keep the profile that they were captured with */
    CaptureReplay(
            CommandSpec command, String file, Map<String, Profile> chosen, SampleTable table, long tellRejections) {
        this.command = command;
        this.file = file;
        this.chosen = Map.copyOf(chosen);
        this.table = table;
        this.tellRejections = tellRejections;
        this.err = command.commandLine().getErr();
    }

    @Override
    public void begun(CaptureHeader header) {
        List<String> names =
                header.probes().stream().map(CaptureHeader.Probe::name).toList();
        for (String name : chosen.keySet()) {
            if (!names.contains(name)) {
                throw new ParameterException(
                        command.commandLine(),
                        "--profile names \"" + name + "\", which " + file + " does not hold; its probes are " + names);
            }
        }
        for (CaptureHeader.Probe probe : header.probes()) {
            Profile profile = profile(probe);
            if (!probe.digest().isEmpty() && !probe.digest().equals(profile.digest())) {
                err.println(probe.name() + ": captured with " + probe.profile() + " "
                        + ProbeReplay.digest(probe.digest()) + ", read now with " + profile.id() + " "
                        + ProbeReplay.digest(profile.digest()));
            }
            probes.add(new ProbeReplay(probe.name(), profile, table, err, tellRejections));
        }
    }

    private Profile profile(CaptureHeader.Probe probe) {
        return Optional.ofNullable(chosen.get(probe.name()))
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

    /** A line for each probe. */
    void summary() {
        probes.forEach(probe -> err.println(probe.summary()));
    }
}
