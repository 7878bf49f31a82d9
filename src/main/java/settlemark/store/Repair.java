package settlemark.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Profile;
import settlemark.session.CheckReport;
import settlemark.session.RepairReport;
import settlemark.session.StoreException;

/** Saves what can be read of a damaged workspace into a new one. The damaged file is copied first and never opened. */
final class Repair {
    private final Path file;
    private final Function<String, Profile> profiles;
    private final Instant now;

    /** @param file without links */
    Repair(Path file, Function<String, Profile> profiles, Instant now) {
        this.file = file;
        this.profiles = profiles;
        this.now = now;
    }

    RepairReport to(Path to) throws StoreException {
        try (NewWorkspace made = NewWorkspace.at(to)) {
            try (DamagedFile damaged = copy(Opening.folder(made.part()))) {
                Salvage salvage = salvage(damaged, made);
                CheckReport check = WorkspaceCheck.ofNew(made.part(), profiles);
                if (!check.whole()) {
                    throw made.failures()
                            .fault("the repaired workspace does not pass the check, so it was not kept: "
                                    + check.damage().get(0));
                }
                Path appeared = made.appear(file);
                return new RepairReport(file, appeared, damaged.steps(), salvage.saved(), salvage.lost());
            }
        }
    }

    /** While nobody writes; in a folder that cannot be written nobody can. */
    private DamagedFile copy(Path folder) throws StoreException {
        boolean writable = Files.isWritable(Opening.folder(file));
        @Nullable WriterLock lock = writable ? WriterLock.take(file) : null;
        try {
            return DamagedFile.of(file, folder);
        } finally {
            if (lock != null) {
                lock.close();
            }
        }
    }

    private Salvage salvage(DamagedFile damaged, NewWorkspace made) throws StoreException {
        Failures failures = made.failures();
        try (Connection into = Opening.write(made.part(), failures)) {
            Salvage salvage = new Salvage(damaged.connection(), into, failures, profiles, now);
            salvage.run();
            Connections.checkpoint(into);
            return salvage;
        } catch (SQLException e) {
            throw failures.of("cannot be written", e);
        }
    }
}
