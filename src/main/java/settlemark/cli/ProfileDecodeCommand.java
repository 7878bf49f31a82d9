package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.decode.FrameExplanation;
import settlemark.measure.Chunk;
import settlemark.profile.ByteText;
import settlemark.profile.Message;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;
import settlemark.session.CaptureReading;

/** {@code settlemark profile decode}: frames, field by field. */
@Command(
        name = "decode",
        headerHeading = "Examples:%n"
                + "  settlemark profile decode my-gauge.yaml --hex 50 31 20 2B 36 2E 38 33 0D 0A%n"
                + "  settlemark profile decode demo-air --capture air.capture%n%n",
        header = "Show what a profile makes of each frame, field by field.",
        description = {
            "",
            "Each frame with its offset, and for each field its place, its bytes in hexadecimal, its raw value, and the"
                    + " value with its unit or why there is none. What is rejected comes with its offset and reason.",
            "Exit codes: 0 done, whatever was rejected; 2 wrong usage; 3 the profile has a problem; 5 the capture is"
                    + " damaged."
        },
        synopsisHeading = "%nUsage: ",
        customSynopsis = "settlemark profile decode PROFILE (--hex HEX... | --capture FILE) [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ProfileDecodeCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(
            arity = "1",
            paramLabel = "PROFILE",
            description = "A profile file, or the id of a profile that comes with the program.")
    String profileName = "";

    @ArgGroup(multiplicity = "1")
    Bytes bytes = new Bytes();

    @Option(
            names = "--message",
            paramLabel = "ID",
            description = "Which message of the profile the bytes are; without it the first.")
    @Nullable
    String messageId;

    @Option(names = "--probe", paramLabel = "NAME", description = "Which probe of the capture, where it has several.")
    @Nullable
    String probe;

    @Option(
            names = "--key-file",
            paramLabel = "FILE",
            description = "The key of a device with protected frames, 32 hexadecimal digits in a file.")
    @Nullable
    Path keyFile;

    @Option(names = "--ask-key", description = "Ask for the key at the terminal, without showing it.")
    boolean askKey;

    @Option(
            names = "--address",
            paramLabel = "ADDRESS",
            description = "The address of a device with protected frames, such as 54:48:E6:8F:80:A5.")
    @Nullable
    String address;

    @Option(names = "--json", description = "A JSON object a frame instead of text.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    /** Where the bytes come from. */
    static final class Bytes {
        @Option(
                names = "--hex",
                arity = "1..*",
                paramLabel = "HEX",
                required = true,
                description = "Bytes in hexadecimal pairs, beginning with a frame.")
        List<String> hex = new ArrayList<>();

        @Option(
                names = "--capture",
                paramLabel = "FILE",
                required = true,
                description = "A capture, see \"settlemark capture\".")
        @Nullable
        Path capture;
    }

    ProfileDecodeCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws IOException {
        CommandSpec own = Commands.spec(spec);
        Secrets secrets = secrets(own);
        Optional<Profile> profile = NamedProfile.find(own, profileName, "name one of these or a file");
        if (profile.isEmpty()) {
            return Program.CHECK_FAILED;
        }
        int message = message(own, profile.get());
        if (bytes.capture != null) {
            return capture(own, bytes.capture, profile.get(), message, secrets);
        }
        explain(own, profile.get(), message, List.of(new Chunk(0, message, hex(own).toBytes())), secrets);
        return Program.DONE;
    }

    private Secrets secrets(CommandSpec own) throws IOException {
        if (askKey && keyFile != null) {
            throw new ParameterException(own.commandLine(), "--ask-key and --key-file: one of the two");
        }
        ByteText key = ByteText.EMPTY;
        if (keyFile != null) {
            key = SecretFile.key(own, keyFile);
        } else if (askKey) {
            key = SecretFile.typedKey(own);
        }
        return new Secrets(address == null ? ByteText.EMPTY : SecretFile.address(own, address), key);
    }

    private ByteText hex(CommandSpec own) {
        String digits = String.join(" ", bytes.hex);
        try {
            return EscapedText.hexBytes(digits);
        } catch (Interview.RefusedException e) {
            throw new ParameterException(own.commandLine(), "--hex: " + e.message());
        }
    }

    private int message(CommandSpec own, Profile profile) {
        List<String> ids = profile.messages().stream().map(Message::id).toList();
        int index = messageId == null ? 0 : ids.indexOf(messageId);
        if (index < 0) {
            throw new ParameterException(
                    own.commandLine(),
                    "profile " + profile.id() + " has no message \"" + messageId + "\"; it has " + ids);
        }
        return index;
    }

    private int capture(CommandSpec own, Path file, Profile profile, int message, Secrets secrets) throws IOException {
        Commands.checkFile(own, file);
        PrintWriter err = own.commandLine().getErr();
        FramesOfCapture frames = new FramesOfCapture(profile, message, Optional.ofNullable(probe));
        CaptureReading reading = program.readCapture(file, frames);
        frames.problems().forEach(problem -> err.println(file + ":" + problem));
        if (!frames.hasProbe() && !frames.names().isEmpty()) {
            throw new ParameterException(
                    own.commandLine(), "say --probe NAME with one of the capture's probes: " + frames.names());
        }
        for (List<Chunk> piece : frames.pieces()) {
            explain(own, profile, message, piece, secrets);
        }
        if (frames.leftOut() > 0) {
            err.println(file + ": the first " + FramesOfCapture.MOST_BYTES + " bytes are explained, " + frames.leftOut()
                    + " are left out; \"settlemark decode\" reads all");
        }
        return reading.damaged() ? Program.DAMAGED : Program.DONE;
    }

    private void explain(CommandSpec own, Profile profile, int message, List<Chunk> chunks, Secrets secrets) {
        PrintWriter out = own.commandLine().getOut();
        String id = profile.messages().get(message).id();
        for (FrameExplanation frame : FrameExplanation.of(profile, message, chunks, secrets)) {
            out.print(json ? JsonLine.text(ExplanationText.json(id, frame)) + "\n" : ExplanationText.text(frame));
        }
    }
}
