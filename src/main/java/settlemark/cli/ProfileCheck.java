package settlemark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.decode.ProfileProof;
import settlemark.document.Problem;
import settlemark.document.Severity;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What came of reading a profile and running its examples.
 *
 * @param file as the person named it
 * @param profile empty where its text has errors
 * @param problems of the text and of the examples, in the order of the text
 * @param examplesRun how many
 */
record ProfileCheck(String file, Optional<Profile> profile, List<Problem> problems, int examplesRun) {
    static ProfileCheck of(String file, byte[] text) {
        ProfileReading reading = ProfileReader.read(file, text);
        List<Problem> problems = new ArrayList<>(reading.problems());
        Optional<ProfileProof> proof = reading.profile().map(ProfileProof::of);
        proof.ifPresent(p -> p.faults()
                .forEach(fault -> problems.add(
                        new Problem(file, fault.line(), fault.column(), Severity.ERROR, fault.message()))));
        problems.sort(null);
        int ran = proof.map(ProfileProof::examplesRun).orElse(0);
        return new ProfileCheck(file, reading.profile(), List.copyOf(problems), ran);
    }

    boolean isGood() {
        return problems.stream().noneMatch(Problem::isError);
    }

    /** For a good profile. */
    String goodLine() {
        Profile good = profile.orElseThrow();
        String examples = examplesRun == 1 ? "1 example ran" : examplesRun + " examples ran";
        return file + ": good profile " + good.id() + (good.simulated() ? " (simulated), " : ", ") + examples;
    }

    ObjectNode json() {
        ObjectNode object = JsonLine.object();
        object.put("file", file);
        object.put("good", isGood());
        profile.ifPresent(read -> {
            object.put("id", read.id());
            object.put("simulated", read.simulated());
            object.put("digest", read.digest());
        });
        object.put("examples", examplesRun);
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
}
