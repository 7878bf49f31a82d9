package settlemark.app;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Plans;
import settlemark.job.Progress;
import settlemark.job.StepState;
import settlemark.rig.DemoRig;
import settlemark.rig.RigFault;
import settlemark.session.LiveSession;
import settlemark.session.Snapshot;
import settlemark.store.SqliteStore;
import settlemark.ui.GuidePictures;

/** Paints the guide's pictures into a folder, from jobs that are done on the rig for them; the argument is the folder. */
public final class GuidePicturesMain {
    private GuidePicturesMain() {}

    public static void main(String[] args) throws Exception {
        File folder = new File(args[0]);
        Files.createDirectories(folder.toPath());
        Map<String, Snapshot> moments = new LinkedHashMap<>();
        job("two-stage-natural-gas", Set.of(), moments);
        job("supply-check", EnumSet.of(RigFault.REGULATOR_CREEP), moments);
        moments.put("far-view", moments.get("at-work"));
        moments.put("keys", moments.get("at-work"));
        moments.put("reason", moments.get("at-work"));
        GuidePictures.paint(folder, moments, Map.of("far-view", "FAR_VIEW", "keys", "KEYS", "reason", "SKIP"));
        System.exit(0);
    }

    private static void job(String key, Set<RigFault> faults, Map<String, Snapshot> moments) throws Exception {
        JobPlan plan = Plans.get(key);
        Path folder = Files.createTempDirectory("pictures");
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("job.settlemark")))) {
            Instant when = Instant.parse("2026-03-14T09:30:00Z");
            var header =
                    DemoScene.header(when, ZoneOffset.UTC, "test", DemoScene.within(), plan, DemoScene.plate(plan));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true, faults, DemoScene.appliance(plan)));
            long session = new HeadlessDemo(header, store, rig, new WireWiring(rig), t -> {}).run();
            LiveSession again = new LiveSession(store.header(session));
            long[] looked = {0};
            store.events(session, event -> {
                again.take(event);
                JobState job = again.job().orElseThrow();
                String name = job.alarm().isPresent()
                        ? "safety-notice"
                        : job.currentStep().map(GuidePicturesMain::name).orElse("");
                // The latest moment of each kind, looked at once a second.
                if (!name.isEmpty() && event.timeNanos() - looked[0] > 1_000_000_000L) {
                    looked[0] = event.timeNanos();
                    moments.put(name, again.snapshot(when.plusNanos(event.timeNanos())));
                }
            });
        }
    }

    private static String name(StepState step) {
        boolean armed = step.progress() == Progress.ARMED;
        return switch (step.key()) {
            case "plate" -> "plate-in-job";
            case "probes" -> "probes-in-job";
            case "found-high" -> armed ? "at-work" : "";
            case "left-high" -> step.adjusting() ? "adjusting" : "";
            case "clock-high" -> "clocking";
            case "statics" -> "typed-values";
            case "close" -> "closing";
            case "record" -> "record";
            default -> "";
        };
    }
}
