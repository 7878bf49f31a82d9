package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import settlemark.job.JobPlan;
import settlemark.job.PlanReader;
import settlemark.job.PlanReading;
import settlemark.job.Plans;

/** A person's own plans, in the folder {@code plans} beside the workspace. */
final class OwnPlans {
    private static final int MOST = 100;

    private OwnPlans() {}

    static Path folder(Path workspace) {
        return workspace.toAbsolutePath().resolveSibling("plans");
    }

    /** The shipped plans, then the person's own by the names of their files; what is wrong with one is said. */
    static List<JobPlan> withShipped(Path folder, PrintWriter err) {
        List<JobPlan> plans = new ArrayList<>();
        Plans.keys().forEach(key -> plans.add(Plans.get(key)));
        for (Path file : files(folder, err)) {
            try {
                PlanReading reading = PlanReader.read(file.toString(), Files.readAllBytes(file));
                reading.problems().forEach(err::println);
                reading.plan().ifPresent(plans::add);
            } catch (IOException e) {
                err.println(file + ": cannot be read (" + e.getMessage() + ")");
            }
        }
        err.flush();
        return List.copyOf(plans);
    }

    private static List<Path> files(Path folder, PrintWriter err) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(f -> f.toString().endsWith(".yaml") && Files.isRegularFile(f))
                    .sorted()
                    .limit(MOST)
                    .toList();
        } catch (IOException e) {
            err.println(folder + ": cannot be read (" + e.getMessage() + ")");
            return List.of();
        }
    }
}
