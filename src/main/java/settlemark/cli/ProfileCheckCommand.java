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
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.decode.ProfileProof;
import settlemark.document.Problem;
import settlemark.document.Severity;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;

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
    private static final int USAGE = 2;
    private static final int CHECK_FAILED = 3;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Profiles, YAML or JSON.")
    private List<Path> files = new ArrayList<>();

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
            return USAGE;
        }
        return failed ? CHECK_FAILED : 0;
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
        ProfileReading reading = ProfileReader.read(file, text);
        List<Problem> problems = new ArrayList<>(reading.problems());
        Optional<ProfileProof> proof = reading.profile().map(ProfileProof::of);
        proof.ifPresent(p -> p.faults()
                .forEach(fault -> problems.add(
                        new Problem(file, fault.line(), fault.column(), Severity.ERROR, fault.message()))));
        problems.sort(null);
        problems.forEach(problem -> err().println(problem));
        boolean good = problems.stream().noneMatch(Problem::isError);
        if (good) {
            out().println(goodLine(file, reading.orThrow(), proof.orElseThrow()));
        }
        return good;
    }

    private static String goodLine(String file, Profile profile, ProfileProof proof) {
        int ran = proof.examplesRun();
        String examples = ran == 1 ? "1 example ran" : ran + " examples ran";
        return file + ": good profile " + profile.id() + (profile.simulated() ? " (simulated), " : ", ") + examples;
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }

    private PrintWriter err() {
        return spec.commandLine().getErr();
    }
}
