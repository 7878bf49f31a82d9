package settlemark.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Function;
import settlemark.profile.Profile;
import settlemark.session.CheckReport;
import settlemark.session.RepairReport;
import settlemark.session.StoreException;
import settlemark.session.StoreTools;

/** The tools, on SQLite workspaces. */
public final class WorkspaceTools implements StoreTools {
    private final Function<String, Profile> profiles;
    private final MountTable mounts;

    /** @param profiles reads a profile's text; throws IllegalArgumentException or IllegalStateException where it cannot */
    public WorkspaceTools(Function<String, Profile> profiles) {
        this(profiles, MountTable.ofThisMachine());
    }

    WorkspaceTools(Function<String, Profile> profiles, MountTable mounts) {
        this.profiles = profiles;
        this.mounts = mounts;
    }

    @Override
    public CheckReport check(Path workspace) throws StoreException {
        return WorkspaceCheck.of(existing(workspace), profiles);
    }

    private Path existing(Path workspace) throws StoreException {
        Path file = Opening.resolve(WorkspacePlace.chosen(workspace));
        if (!Files.exists(file)) {
            throw new Failures(file).fault("there is no such file; name the workspace's file");
        }
        Opening.refuseRemote(file, mounts);
        return file;
    }

    @Override
    public Sizes compact(Path workspace) throws StoreException {
        return new Compaction(existing(workspace), profiles).run();
    }

    @Override
    public CheckReport backup(Path workspace, Path to) throws StoreException {
        return new Backup(existing(workspace), profiles).to(to);
    }

    @Override
    public RepairReport repair(Path workspace, Path to, Instant now) throws StoreException {
        return new Repair(existing(workspace), profiles, now).to(to);
    }
}
