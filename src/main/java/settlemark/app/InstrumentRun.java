package settlemark.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import settlemark.cli.InstrumentDesk;
import settlemark.job.InstrumentCard;
import settlemark.session.Instruments.Kept;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** The commands on instruments, in the person's workspace or another. */
final class InstrumentRun implements InstrumentDesk {
    @Override
    public List<Kept> all(Optional<Path> workspace) throws StoreException {
        if (workspace.isEmpty() && !Workspaces.hasOwn()) {
            return List.of();
        }
        try (SqliteStore store = Workspaces.reading(workspace)) {
            return store.instruments().all();
        }
    }

    @Override
    public Set<String> serials(Optional<Path> workspace) throws StoreException {
        return Files.exists(Workspaces.file(workspace))
                ? all(workspace).stream().map(k -> k.card().serial()).collect(Collectors.toSet())
                : Set.of();
    }

    @Override
    public void put(Optional<Path> workspace, List<InstrumentCard> cards) throws StoreException {
        try (SqliteStore store = Workspaces.person(workspace)) {
            store.instruments().put(cards);
        }
    }

    @Override
    public boolean remove(Optional<Path> workspace, String serial) throws StoreException {
        try (SqliteStore store = Workspaces.existing(workspace)) {
            return store.instruments().remove(serial);
        }
    }

    @Override
    public LocalDate today() {
        return LocalDate.now();
    }
}
