package settlemark.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.session.CheckReport;
import settlemark.session.Damage;
import settlemark.session.RepairReport;
import settlemark.session.Span;
import settlemark.session.StoreTools;

/** Keeps what is asked for, and finds the damage that a test puts in. */
final class FakeTools implements StoreTools {
    static final Damage BLOCK = new Damage(
            "session 3",
            "gauge",
            "port-1",
            Optional.of(new Span(409_600_000_000L, 819_100_000_000L)),
            "samples cannot be read: the digest of a column is not that of its content");

    final List<Object> asked = new ArrayList<>();
    final List<Damage> damage = new ArrayList<>();

    @Override
    public CheckReport check(Path workspace) {
        asked.add(List.of("check", workspace));
        return new CheckReport(workspace, 3, new CheckReport.Contents(2, 1, 400, 40, 3, 0, 1), damage, 0);
    }

    @Override
    public RepairReport repair(Path workspace, Path to, Instant now) {
        asked.add(List.of("repair", workspace, to, now));
        return new RepairReport(
                workspace,
                to,
                List.of("the head was made again"),
                List.of(new RepairReport.Saved("session 3", 90, 100, 1, 2)),
                damage);
    }

    @Override
    public Sizes compact(Path workspace) {
        asked.add(List.of("compact", workspace));
        return new Sizes(1000, 600);
    }

    @Override
    public CheckReport backup(Path workspace, Path to) {
        asked.add(List.of("backup", workspace, to));
        return check(to);
    }
}
