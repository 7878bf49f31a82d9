package settlemark.job;

import java.util.List;
import java.util.Optional;
import settlemark.document.Problem;

/**
 * What came of reading a plan.
 *
 * @param plan empty where one of the problems is an error
 * @param problems all of them in the order of the text
 */
public record PlanReading(Optional<JobPlan> plan, List<Problem> problems) {
    public PlanReading {
        problems = List.copyOf(problems);
        if (plan.isPresent() == problems.stream().anyMatch(Problem::isError)) {
            throw new IllegalArgumentException("a plan has no errors, and what has no errors is a plan");
        }
    }

    /** The plan of a document that must be good, such as a shipped one. */
    public JobPlan orThrow() {
        return plan.orElseThrow(() -> new IllegalStateException("not a good plan: " + problems));
    }
}
