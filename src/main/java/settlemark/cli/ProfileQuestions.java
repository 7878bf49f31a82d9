package settlemark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.cli.Interview.EndedException;
import settlemark.cli.Interview.RefusedException;
import settlemark.profile.Profile;
import settlemark.profile.ProfileDraft;
import settlemark.profile.ProfileDraft.Answers;
import settlemark.profile.ProfileDraft.Reading;

/** All questions of a new profile, in the order in which a manual answers them. */
final class ProfileQuestions {
    private static final String ENDING = ".yaml";

    private final Interview interview;
    private final @Nullable Path given;

    /**
     * What was answered.
     *
     * @param file where the profile goes
     */
    record Outcome(Answers answers, Path file) {}

    /** @param given where the profile goes, null to ask for it */
    ProfileQuestions(Interview interview, @Nullable Path given) {
        this.interview = interview;
        this.given = given;
    }

    Outcome ask() throws EndedException, IOException {
        interview.say("An empty line takes the answer in square brackets. Ctrl-D ends without writing anything.");
        String name = interview.ask("Name", "What do you call the device?", "My gauge", answer -> {
            if (answer.length() <= 100) {
                return answer;
            }
            throw new RefusedException("100 characters at most, got " + answer.length());
        });
        String id = interview.ask(
                "Key", "The profile's key in commands and files.", standardKey(name), ReadingQuestions::key);
        Path file = given == null ? file(id) : given;
        ProfileDraft.Shape shape = shape();
        List<Reading> readings = new ReadingQuestions(interview, shape).ask();
        Answers answers = new Answers(id, name, shape, readings, Optional.empty());
        Optional<ProfileDraft.Capture> frame = Optional.empty();
        Optional<Profile> profile = DraftCheck.profile(answers);
        if (profile.isPresent()) {
            frame = new FrameQuestion(interview, shape, profile.get()).ask();
        }
        return new Outcome(new Answers(id, name, shape, readings, frame), file);
    }

    private String standardKey(String name) {
        Path last = given == null ? null : given.getFileName();
        String words = last == null ? name : last.toString().replaceAll("\\.(yaml|yml|json)$", "");
        return ReadingQuestions.key(words, "my-gauge");
    }

    private Path file(String id) throws EndedException, IOException {
        return interview.ask(
                "File", "Where the profile is written; never over a file that is there.", id + ENDING, answer -> {
                    try {
                        Path file = Path.of(answer);
                        if (Files.exists(file)) {
                            throw new RefusedException(
                                    file + " is there already and is not overwritten; choose another name");
                        }
                        Path folder = file.toAbsolutePath().getParent();
                        if (folder == null || !Files.isDirectory(folder)) {
                            throw new RefusedException(
                                    "there is no folder " + folder + "; make it first or choose another");
                        }
                        return file;
                    } catch (InvalidPathException e) {
                        throw new RefusedException("that is no file name: " + e.getReason());
                    }
                });
    }

    private ProfileDraft.Shape shape() throws EndedException, IOException {
        while (true) {
            ProfileDraft.Shape shape = new ShapeQuestions(interview).ask();
            List<String> complaints = DraftCheck.complaints(shape);
            if (complaints.isEmpty()) {
                return shape;
            }
            interview.say("  These answers do not fit each other; please answer again:");
            complaints.forEach(complaint -> interview.say("  " + complaint));
        }
    }
}
