package settlemark.job;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** Two stages without relighting, flue gas and static pressure: the plan that pictures and record fixtures are made of. */
public final class ShortPlan {
    private ShortPlan() {}

    public static JobPlan twoStage() {
        try (InputStream in = ShortPlan.class.getResourceAsStream("/settlemark/job/short-two-stage.yaml")) {
            if (in == null) {
                throw new IllegalStateException("short-two-stage.yaml is not among the test resources");
            }
            return PlanReader.read("short-two-stage.yaml", in.readAllBytes()).orThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
