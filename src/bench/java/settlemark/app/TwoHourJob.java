package settlemark.app;

import java.io.File;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import settlemark.cli.Commands;
import settlemark.job.Act;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.rig.DemoTechnician;
import settlemark.session.LiveSession;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.store.SqliteStore;

/** The demo's job with a long wait before it, so that it takes two hours; and its record through the command line. */
public final class TwoHourJob {
    private static final long TWO_HOURS_NANOS = 7_200_000_000_000L;
    /** Of the demo's job, so that the rest is waited for. */
    private static final long JOB_NANOS = 3_300_000_000_000L;

    private static final long LOOK_NANOS = 200_000_000;
    private static final int LOOKS_A_COMMIT = 50;

    private TwoHourJob() {}

    /** Stores the job in a new workspace. */
    public static void store(Path workspace) throws Exception {
        SessionHeader header = DemoScene.header(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC, "bench");
        DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
        LiveSession live = new LiveSession(header);
        for (DemoInstrument instrument : DemoInstrument.values()) {
            int probe = instrument.ordinal();
            rig.connect(instrument, chunk -> live.take(new SessionEvent.Bytes(probe, chunk)));
        }
        DemoGlue glue = new DemoGlue(new DemoTechnician(rig), rig);
        try (SqliteStore store = Workspaces.demo(Optional.of(workspace))) {
            long number = store.begin(header);
            long now = 0;
            for (int look = 1; now < TWO_HOURS_NANOS; look++) {
                now += LOOK_NANOS;
                rig.advanceTo(now);
                live.passTo(now);
                if (now > TWO_HOURS_NANOS - JOB_NANOS) {
                    Instant wall = header.startedAt().plusNanos(now);
                    for (Act act : glue.look(live.snapshot(wall))) {
                        live.take(new SessionEvent.Done(now, act));
                    }
                }
                if (look % LOOKS_A_COMMIT == 0) {
                    store.append(number, live.drain());
                }
            }
            store.append(number, live.drain());
            store.end(number, now);
        }
    }

    /** As {@code settlemark record latest} does. */
    public static void record(Path workspace, Path folder) {
        run("record", "latest", "--workspace", workspace.toString(), "--out", folder.toString());
    }

    /** As {@code settlemark verify} does. */
    public static void verify(Path workspace, Path folder) {
        File[] seals = folder.toFile().listFiles((in, name) -> name.endsWith("-seal.json"));
        if (seals == null || seals.length != 1) {
            throw new IllegalStateException("there is no seal in " + folder);
        }
        run("verify", seals[0].getPath(), "--workspace", workspace.toString());
    }

    private static void run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(new Settlemark(), new PrintWriter(out), new PrintWriter(err), arguments);
        if (code != 0 || !err.toString().isEmpty()) {
            throw new IllegalStateException(String.join(" ", arguments) + " ended with " + code + ": " + out + err);
        }
    }
}
