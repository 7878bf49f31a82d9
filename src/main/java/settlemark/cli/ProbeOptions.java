package settlemark.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import settlemark.profile.Profile;

/** Which probes are opened, where, and with which profile: the same for every command that streams. */
final class ProbeOptions {
    @Option(
            names = "--probe",
            paramLabel = "NAME=ADDRESS",
            description = "A name of your choice and the serial port, or ble: and the Bluetooth address, with @ADAPTER"
                    + " behind it where there are several adapters; once for each probe.")
    Map<String, String> ports = new LinkedHashMap<>();

    @Option(
            names = "--profile",
            paramLabel = "NAME=PROFILE",
            description = "A profile file, or the id of a profile that comes with the program. Without it the probe's"
                    + " name is taken for the id.")
    Map<String, String> profiles = new LinkedHashMap<>();

    /** A probe and the profile that was found for it. */
    record Chosen(String name, String port, Profile profile) {}

    Set<String> names() {
        return ports.keySet();
    }

    /**
     * Finds each probe's profile; the problems of profile files are printed.
     *
     * @return empty where a profile has errors
     */
    Optional<List<Chosen>> choose(CommandSpec command) throws IOException {
        for (String name : profiles.keySet()) {
            if (!ports.containsKey(name)) {
                throw new ParameterException(
                        command.commandLine(),
                        "--profile names \"" + name + "\", but no --probe does; the probes are " + ports.keySet());
            }
        }
        if (ports.isEmpty()) {
            throw new ParameterException(command.commandLine(), "Missing required option: '--probe=NAME=ADDRESS'");
        }
        List<Chosen> chosen = new ArrayList<>();
        for (Map.Entry<String, String> port : ports.entrySet()) {
            String name = port.getKey();
            Optional<Profile> profile = NamedProfile.find(
                    command,
                    profiles.getOrDefault(name, name),
                    "say --profile " + name + "=FILE for the probe " + name);
            if (profile.isEmpty()) {
                return Optional.empty();
            }
            chosen.add(new Chosen(name, port.getValue(), profile.get()));
        }
        return Optional.of(chosen);
    }
}
