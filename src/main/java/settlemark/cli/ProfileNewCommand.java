package settlemark.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.profile.ProfileDraft;

/** {@code settlemark profile new}: asks, and writes a first profile. */
@Command(
        name = "new",
        headerHeading = "Examples:%n"
                + "  settlemark profile new%n"
                + "  settlemark profile new my-gauge.yaml < answers.txt%n%n",
        header = "Ask about a device and write its profile.",
        description = {
            "",
            "Each question has an answer that an empty line stands for. The written file has comments, is checked at once"
                    + " and may be edited. Nothing is overwritten; Ctrl-D ends with nothing written.",
            "Exit codes: 0 written and good, 2 ended before the last answer or wrong usage, 3 written, and its check says"
                    + " what is wrong."
        },
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class ProfileNewCommand implements Callable<Integer> {
    private final InputStream in;

    @Parameters(arity = "0..1", paramLabel = "FILE", description = "The new file. Without it, it is asked for.")
    @Nullable
    Path file;

    @Spec
    @Nullable
    CommandSpec spec;

    /** @param in the person's answers */
    ProfileNewCommand(InputStream in) {
        this.in = in;
    }

    @Override
    public Integer call() throws IOException {
        CommandSpec own = Commands.spec(spec);
        PrintWriter err = own.commandLine().getErr();
        if (file != null) {
            Commands.checkNew(own, "FILE", file);
        }
        BufferedReader answers = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
        try {
            ProfileQuestions.Outcome outcome = new ProfileQuestions(new Interview(answers, err), file).ask();
            return write(outcome, own.commandLine().getOut(), err);
        } catch (Interview.EndedException e) {
            err.println("The answers ended early: nothing was written.");
            return Program.USAGE;
        }
    }

    private static int write(ProfileQuestions.Outcome outcome, PrintWriter out, PrintWriter err) throws IOException {
        byte[] text = ProfileDraft.text(outcome.answers()).getBytes(StandardCharsets.UTF_8);
        Path file = outcome.file();
        Files.write(file, text, StandardOpenOption.CREATE_NEW);
        err.println();
        ProfileCheck check = ProfileCheck.of(file.toString(), text);
        check.problems().forEach(err::println);
        out.println(check.isGood() ? check.goodLine() : file.toString());
        String id = outcome.answers().id();
        if (!check.isGood()) {
            err.println("Next: correct " + file + " in an editor, then: settlemark profile check " + file);
        } else if (outcome.answers().capture().isEmpty()) {
            err.println("Next: see what the device sends, paste a frame into the examples, and check again:");
            err.println("  settlemark capture --probe " + id + "=PORT --profile " + id + "=" + file + " --out " + id
                    + ".capture --seconds 10");
            err.println("  settlemark profile check " + file);
        } else {
            err.println("Next: find the port with \"settlemark probes\", then:");
            err.println("  settlemark log --probe " + id + "=PORT --profile " + id + "=" + file);
        }
        return check.isGood() ? Program.DONE : Program.CHECK_FAILED;
    }
}
