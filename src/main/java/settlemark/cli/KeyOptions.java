package settlemark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import settlemark.profile.ByteText;
import settlemark.session.ProbeKeys;

/** The keys of probes whose frames are protected: the same for every command that decodes a session. */
final class KeyOptions {
    @Option(
            names = {"--key", "--key-file"},
            paramLabel = "PROBE=FILE",
            description =
                    "The key of a probe whose frames are protected, 32 hexadecimal digits in a file. It is neither"
                            + " stored nor printed.")
    Map<String, Path> files = new LinkedHashMap<>();

    /** Reads the files. */
    ProbeKeys keys(CommandSpec command) throws IOException {
        Map<String, ByteText> keys = new LinkedHashMap<>();
        for (Map.Entry<String, Path> entry : files.entrySet()) {
            keys.put(entry.getKey(), SecretFile.key(command, entry.getValue()));
        }
        return new ProbeKeys(keys);
    }
}
