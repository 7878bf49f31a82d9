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
import settlemark.decode.ProfileProof;
import settlemark.document.Problem;
import settlemark.document.Severity;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

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
        ProfileReading reading = ProfileReader.read(file, text);
        List<Problem> problems = new ArrayList<>(reading.problems());
        Optional<ProfileProof> proof = reading.profile().map(ProfileProof::of);
        proof.ifPresent(p -> p.faults()
                .forEach(fault -> problems.add(
                        new Problem(file, fault.line(), fault.column(), Severity.ERROR, fault.message()))));
        problems.sort(null);
        boolean good = problems.stream().noneMatch(Problem::isError);
        if (json) {
            out().print(JsonLine.text(object(file, good, reading, proof, problems)) + "\n");
            return good;
        }
        problems.forEach(problem -> err().println(problem));
        if (good) {
            out().println(goodLine(file, reading.orThrow(), proof.orElseThrow()));
        }
        return good;
    }

    private static ObjectNode object(
            String file, boolean good, ProfileReading reading, Optional<ProfileProof> proof, List<Problem> problems) {
        ObjectNode object = JsonLine.object();
        object.put("file", file);
        object.put("good", good);
        reading.profile().ifPresent(profile -> {
            object.put("id", profile.id());
            object.put("simulated", profile.simulated());
            object.put("digest", profile.digest());
        });
        object.put("examples", proof.map(ProfileProof::examplesRun).orElse(0));
        ArrayNode list = object.putArray("problems");
        for (Problem problem : problems) {
            list.addObject()
                    .put("line", problem.line())
                    .put("column", problem.column())
                    .put("severity", problem.isError() ? "error" : "warning")
                    .put("message", problem.message());
        }
        return object;
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
