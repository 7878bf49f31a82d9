package settlemark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import settlemark.job.JobPlan;
import settlemark.job.PlateReader;
import settlemark.job.PlateReading;
import settlemark.job.RatingPlate;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.settle.SettleChoices;

/** {@code job new}: a whole job by typing. */
@Command(
        name = "new",
        description = {
            "Does a whole job from its plan: says each step with its caution, waits for you and for the readings, and ends"
                    + " with the record and its seal. Enter says \"I did it\"; ? lists what else can be typed. Lines can"
                    + " come from a file. What is done is stored at once; \"settlemark job resume\" goes on with a job that"
                    + " was left."
        },
        header = {
            "Examples:",
            "  settlemark job new --plan two-stage-natural-gas --title \"Ash Lane 12\" --plate plate.yaml \\",
            "      --probe gauge=/dev/ttyUSB0 --profile gauge=my-gauge.yaml --role gauge.p1=inlet --role gauge.p2=manifold",
            "  settlemark job new --plan mine.yaml --rig --fault cap-shift",
            "  yes '' | settlemark job new --rig      simulated hands do every step",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark job new [--plan PLAN] (--rig | --probe NAME=ADDRESS ...) [OPTIONS]",
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {
            " 0:done, nothing left outside its limit",
            " 1:left before its end, or the workspace cannot be written",
            " 2:wrong usage, also a plan or plate with a mistake or a channel without a probe",
            " 3:something was left outside its limit, or a profile has a problem",
            " 4:no such probe or port, or another device than the last time",
            " 5:the workspace is damaged"
        },
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class NewJobCommand implements Callable<Integer> {
    private final Program program;
    private final InputStream in;

    @Option(
            names = "--plan",
            paramLabel = "PLAN",
            defaultValue = "two-stage-natural-gas",
            description = "A shipped plan by its key, or a file of your own; \"settlemark job plans\" lists them.")
    String plan = "";

    @Option(
            names = "--plate",
            paramLabel = "FILE",
            description =
                    "The rating plate; \"settlemark job plate PLAN\" prints one to fill in. Without it that of the"
                            + " last job of the same title.")
    @Nullable
    Path plate;

    @Option(
            names = "--title",
            paramLabel = "TEXT",
            defaultValue = "job",
            description = "Place and appliance; the same words at each visit.")
    String title = "";

    @Mixin
    StreamOptions stream = new StreamOptions();

    @Mixin
    JobOptions job = new JobOptions();

    @Spec
    @Nullable
    CommandSpec spec;

    NewJobCommand(Program program, InputStream in) {
        this.program = program;
        this.in = in;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        JobPlan chosen = NamedPlan.read(own, plan);
        Optional<RatingPlate> copied = plate == null ? Optional.empty() : Optional.of(plate(own, plate));
        job.check(own);
        if (job.rig != stream.options.names().isEmpty()) {
            throw new ParameterException(
                    own.commandLine(),
                    "say --rig or --probe NAME=ADDRESS, one of the two: where do the values come from?");
        }
        Optional<List<Program.Probe>> probes = job.rig ? Optional.of(List.of()) : stream.probes(own);
        if (probes.isEmpty()) {
            return Program.CHECK_FAILED;
        }
        ProbeKeys keys = job.rig ? ProbeKeys.NONE : stream.keys(own, probes.get());
        Program.Log log = new Program.Log(
                probes.get(),
                job.workspace.file(),
                OptionalDouble.empty(),
                title,
                stream.anotherDevice,
                !stream.noRoles,
                keys,
                RawBytes.KEPT,
                SettleChoices.NONE,
                Optional.empty());
        return program.newJob(
                new Program.NewJob(title, chosen, copied, job.bench(), log, job.folder(), job.instruments(own)),
                job.talk(program, own, in),
                own.commandLine().getOut(),
                own.commandLine().getErr());
    }

    /** @throws ParameterException with all that is wrong in it */
    private static RatingPlate plate(CommandSpec own, Path file) {
        Commands.checkFile(own, file);
        try {
            PlateReading reading = PlateReader.read(file.toString(), Files.readAllBytes(file));
            return reading.plate().orElseThrow(() -> new DocumentMistakes(own, reading.problems()));
        } catch (IOException e) {
            throw new ParameterException(own.commandLine(), file + ": cannot be read (" + e.getMessage() + ")", e);
        }
    }
}
