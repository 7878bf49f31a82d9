package settlemark.cli;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.job.Plans;

/** Commands on jobs. */
@Command(
        name = "job",
        headerHeading = "Examples:%n" + "  settlemark job new --rig%n" + "  settlemark job list%n"
                + "  settlemark job show latest%n" + "  settlemark job plans supply-check%n%n",
        header = "Do a job by typing, go on with one, look at the jobs of a workspace and at the plans.",
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class JobCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    private JobCommand() {}

    static CommandLine line(Program program, InputStream in) {
        return new CommandLine(new JobCommand())
                .addSubcommand(new NewJobCommand(program, in))
                .addSubcommand(new ResumeJobCommand(program, in))
                .addSubcommand(new ListJobs(program))
                .addSubcommand(new ShowJob(program))
                .addSubcommand(new ShowPlans())
                .addSubcommand(new PlateCommand());
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "job needs a command: job new, job resume SESSION, job list, job show SESSION, job plans [PLAN] or job"
                        + " plate PLAN");
    }

    /** {@code job list}. */
    @Command(
            name = "list",
            description =
                    "The jobs of a workspace, newest first: number, when, what, by which plan, and how it stands.",
            mixinStandardHelpOptions = true)
    static final class ListJobs implements Callable<Integer> {
        private final Program program;

        @Mixin
        WorkspaceOption workspace = new WorkspaceOption();

        @Spec
        @Nullable
        CommandSpec spec;

        ListJobs(Program program) {
            this.program = program;
        }

        @Override
        public Integer call() throws Exception {
            return program.stored()
                    .jobs(workspace.file(), Commands.spec(spec).commandLine().getOut());
        }
    }

    /** {@code job show}. */
    @Command(
            name = "show",
            description = {
                "One job: its table of stages, what is still missing for a complete record, what was found, where the plan"
                        + " was not followed. Writes nothing.",
                "Exit codes: 0, or 3 where something as left lies outside its limit."
            },
            mixinStandardHelpOptions = true)
    static final class ShowJob implements Callable<Integer> {
        private final Program program;

        @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
        String session = "";

        @Mixin
        KeyOptions keyOptions = new KeyOptions();

        @Mixin
        WorkspaceOption workspace = new WorkspaceOption();

        @Spec
        @Nullable
        CommandSpec spec;

        ShowJob(Program program) {
            this.program = program;
        }

        @Override
        public Integer call() throws Exception {
            CommandSpec own = Commands.spec(spec);
            return program.stored()
                    .job(
                            new StoredDesk.Job(session, workspace.file(), keyOptions.keys(own)),
                            own.commandLine().getOut(),
                            own.commandLine().getErr());
        }
    }

    /** {@code job plans}. */
    @Command(
            name = "plans",
            description = {
                "The shipped job plans; with the key of one, its text, as a start for a plan of your own.",
                "For example:",
                "  settlemark job plans one-stage-natural-gas > mine.yaml",
                "  settlemark demo --headless --plan mine.yaml"
            },
            mixinStandardHelpOptions = true)
    static final class ShowPlans implements Callable<Integer> {
        @Parameters(
                paramLabel = "PLAN",
                arity = "0..1",
                description = "Key of a shipped plan, or a file to be checked.")
        @Nullable
        String plan;

        @Spec
        @Nullable
        CommandSpec spec;

        @Override
        public Integer call() {
            CommandSpec own = Commands.spec(spec);
            var out = own.commandLine().getOut();
            if (plan == null) {
                int width = Plans.keys().stream().mapToInt(String::length).max().orElse(0);
                Plans.keys()
                        .forEach(key -> out.println(key
                                + " ".repeat(width + 2 - key.length())
                                + Plans.get(key).title()));
                return Program.DONE;
            }
            Optional<byte[]> text = Plans.document(plan);
            if (text.isPresent()) {
                out.print(new String(text.get(), StandardCharsets.UTF_8));
            } else {
                var good = NamedPlan.read(own, plan);
                out.println(plan + ": a good plan, \"" + good.title() + "\", "
                        + good.steps().size() + " steps");
            }
            return Program.DONE;
        }
    }
}
