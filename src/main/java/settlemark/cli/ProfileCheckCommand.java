package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads profiles, runs their examples and prints all that is wrong with them. */
@Command(
        name = "check",
        headerHeading = "Examples:%n"
                + "  settlemark profile check my-gauge.yaml%n"
                + "  settlemark profile check device-profiles/*.yaml%n%n",
        header = "Check profiles and run their examples.",
        description = {
            "",
            "Prints every problem as file:line:column on standard error, and a line for each good file on standard"
                    + " output.",
            "Exit codes: 0 all good, 2 a file cannot be read, 3 a profile has a problem or an example does not hold."
        },
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class ProfileCheckCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Profiles, YAML or JSON.")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--json",
            description = "A JSON object a file on standard output, with its problems in it, instead of text.")
    private boolean json;

    @Override
    public Integer call() {
        boolean unreadable = false;
        boolean failed = false;
        for (Path file : files) {
            Optional<byte[]> text = read(file);
            unreadable |= text.isEmpty();
            failed |= text.isPresent() && !check(file.toString(), text.get());
        }
        out().flush();
        err().flush();
        if (unreadable) {
            return Program.USAGE;
        }
        return failed ? Program.CHECK_FAILED : Program.DONE;
    }

    private Optional<byte[]> read(Path file) {
        try {
            return Optional.of(NamedProfile.bytes(file));
        } catch (NoSuchFileException e) {
            err().println(file + ": no such file");
        } catch (IOException e) {
            String reason = Files.isDirectory(file) ? "is a folder; name the files in it" : "cannot be read: " + e;
            err().println(file + ": " + reason);
        }
        return Optional.empty();
    }

    private boolean check(String file, byte[] text) {
        ProfileCheck check = ProfileCheck.of(file, text);
        if (json) {
            out().print(JsonLine.text(check.json()) + "\n");
            return check.isGood();
        }
        check.problems().forEach(problem -> err().println(problem));
        if (check.isGood()) {
            out().println(check.goodLine());
        }
        return check.isGood();
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }

    private PrintWriter err() {
        return spec.commandLine().getErr();
    }
}
