package settlemark.app;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import settlemark.job.Act;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Plans;
import settlemark.job.Progress;
import settlemark.job.StepState;
import settlemark.rig.DemoRig;
import settlemark.rig.RigFault;
import settlemark.session.LiveSession;
import settlemark.session.SessionEvent;
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
        job("two-stage-natural-gas", "2026-03-14", Set.of(), List.of(), moments);
        job("supply-check", "2026-03-14", EnumSet.of(RigFault.REGULATOR_CREEP), List.of(), moments);
        moments.put("visits", visited());
        moments.put("far-view", moments.get("at-work"));
        moments.put("keys", moments.get("at-work"));
        moments.put("reason", moments.get("at-work"));
        moments.put("settings", moments.get("at-work"));
        GuidePictures.paint(
                folder,
                moments,
                Map.of(
                        "far-view",
                        "FAR_VIEW",
                        "keys",
                        "KEYS",
                        "reason",
                        "SKIP",
                        "settings",
                        "SETTINGS",
                        "visits",
                        "VISITS"));
        System.exit(0);
    }

    /** The end of a third visit to one furnace. */
    private static Snapshot visited() throws Exception {
        Map<String, Snapshot> moments = new LinkedHashMap<>();
        List<Act.Former> before = new ArrayList<>();
        String plan = "two-stage-natural-gas";
        before.addAll(job(plan, "2024-03-19", EnumSet.of(RigFault.CAP_SHIFT), before, moments));
        before.addAll(job(plan, "2025-03-11", Set.of(), before, moments));
        job(plan, "2026-03-14", Set.of(), before, moments);
        return Objects.requireNonNull(moments.get("closing"));
    }

    /** Returns what it left, as the next visit is told it. */
    private static List<Act.Former> job(
            String key, String day, Set<RigFault> faults, List<Act.Former> before, Map<String, Snapshot> moments)
            throws Exception {
        JobPlan plan = Plans.get(key);
        Path folder = Files.createTempDirectory("pictures");
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("job.settlemark")))) {
            Instant when = Instant.parse(day + "T09:30:00Z");
            var header =
                    DemoScene.header(when, ZoneOffset.UTC, "test", DemoScene.within(), plan, DemoScene.plate(plan));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true, faults, DemoScene.appliance(plan)));
            long session = new HeadlessDemo(header, store, rig, new WireWiring(rig), t -> {}).run();
            LiveSession again = new LiveSession(store.header(session));
            before.forEach(visit -> again.take(new SessionEvent.Done(0, visit)));
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
            return Visits.left(store, header.title());
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
