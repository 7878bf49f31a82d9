package settlemark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import settlemark.job.JobPlan;
import settlemark.job.PlanReader;
import settlemark.job.PlanReading;
import settlemark.job.Plans;

/** A job plan as a person names it: the key of a shipped one, or a file. */
final class NamedPlan {
    private NamedPlan() {}

    /** @throws ParameterException where there is none, or with all that is wrong in it */
    static JobPlan read(CommandSpec own, String name) {
        Optional<JobPlan> shipped = Plans.find(name);
        if (shipped.isPresent()) {
            return shipped.get();
        }
        Path file = Path.of(name);
        if (!Files.isRegularFile(file)) {
            throw new ParameterException(
                    own.commandLine(),
                    "no shipped plan and no file is called \"" + name + "\"; the shipped plans are "
                            + String.join(", ", Plans.keys()));
        }
        return of(own, name, file);
    }

    private static JobPlan of(CommandSpec own, String name, Path file) {
        try {
            PlanReading reading = PlanReader.read(name, Files.readAllBytes(file));
            return reading.plan().orElseThrow(() -> new DocumentMistakes(own, reading.problems()));
        } catch (IOException e) {
            throw new ParameterException(own.commandLine(), name + ": cannot be read (" + e.getMessage() + ")", e);
        }
    }
}
