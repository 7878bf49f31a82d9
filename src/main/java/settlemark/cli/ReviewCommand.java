package settlemark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.job.SettledBy;
import settlemark.session.OtherLimit;
import settlemark.session.Rejudging;

/** {@code settlemark review}: a second person accepts or returns a sealed record. */
@Command(
        name = "review",
        description = {
            "Accepts or returns a sealed record or session. The review is signed and stands beside the seal; nothing that"
                    + " was sealed is changed. What was changed since it was sealed cannot be reviewed.",
            "With --limit, --set or --rule the session is judged again first: what they change is said, signed with the review"
                    + " and shown on the record.",
            "SESSION is a session of a workspace, by number, key or \"latest\", or a file of a record beside its seal.",
            "Exit codes: 0 done, 2 wrong usage, 3 it is not as it was sealed, 5 the workspace is damaged."
        },
        header = {
            "Examples:",
            "  settlemark review latest --accept --by \"A. Second\"",
            "  settlemark review visit-seal.json --return --by \"A. Second\" --comment \"rise read too early\"",
            "  settlemark review latest --accept --by \"A. Second\" --limit left-high.rise=35..60 --set gas.drift=0.01",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark review SESSION (--accept | --return) --by NAME [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class ReviewCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "SESSION", description = "A session, or a file of a record.")
    String subject = "";

    @ArgGroup(multiplicity = "1")
    Judgement judgement = new Judgement();

    /** Exactly one of the two. */
    static final class Judgement {
        @Option(names = "--accept", description = "What was sealed is accepted.")
        boolean accept;

        @Option(names = "--return", description = "It goes back; a comment says why.")
        boolean goesBack;
    }

    @Option(names = "--by", paramLabel = "NAME", required = true, description = "Who reviews.")
    String person = "";

    @Option(names = "--comment", paramLabel = "TEXT", defaultValue = "", description = "Why.")
    String comment = "";

    @Option(
            names = "--limit",
            paramLabel = "STEP.FIGURE=LOW..HIGH",
            description =
                    "Another limit for a figure of a step, in the unit of its verdict or with a UCUM code after a space;"
                            + " one end may be left out. May be said again.")
    List<String> limits = new ArrayList<>();

    @Mixin
    SettingOptions settings = new SettingOptions();

    @Mixin
    RuleOptions rules = new RuleOptions();

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--key", paramLabel = "FILE", description = "Your key, if not the workspace's; made if not there.")
    @Nullable
    Path key;

    @Option(names = "--phrase-file", paramLabel = "FILE", description = "The key's pass phrase, in the first line.")
    @Nullable
    Path phraseFile;

    @Spec
    @Nullable
    CommandSpec spec;

    ReviewCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        if (person.isBlank()) {
            throw new ParameterException(own.commandLine(), "--by must name the person who reviews");
        }
        if (judgement.goesBack && comment.isBlank()) {
            throw new ParameterException(own.commandLine(), "--return needs --comment, which says why");
        }
        return program.sessions()
                .review(
                        new SessionDesk.Review(
                                subject,
                                judgement.accept,
                                person,
                                comment,
                                again(own),
                                workspace.file(),
                                Optional.ofNullable(key),
                                Optional.ofNullable(phraseFile)),
                        own.commandLine().getOut(),
                        own.commandLine().getErr());
    }

    private Rejudging again(CommandSpec own) {
        List<OtherLimit> others = new ArrayList<>();
        for (String limit : limits) {
            try {
                others.add(OtherLimit.of(limit));
            } catch (IllegalArgumentException e) {
                throw SettingOptions.wrong(own, "--limit " + limit + ": " + e.getMessage());
            }
        }
        SettledBy by = rules.settledBy(own);
        return new Rejudging(settings.choices(own), by.rule().isPresent() ? Optional.of(by) : Optional.empty(), others);
    }
}
