package settlemark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import settlemark.job.InstrumentCard;
import settlemark.session.Instruments.Kept;
import settlemark.session.LastUse;

/** Instruments in memory, on a day that stands still. */
final class FakeInstruments implements InstrumentDesk {
    static final LocalDate TODAY = LocalDate.of(2026, 3, 14);

    final TreeMap<String, InstrumentCard> cards = new TreeMap<>();

    @Override
    public List<Kept> all(Optional<Path> workspace) {
        return cards.values().stream().map(c -> new Kept(c, LastUse.NEVER)).toList();
    }

    @Override
    public Set<String> serials(Optional<Path> workspace) {
        return cards.keySet();
    }

    @Override
    public void put(Optional<Path> workspace, List<InstrumentCard> put) {
        put.forEach(c -> cards.put(c.serial(), c));
    }

    @Override
    public boolean remove(Optional<Path> workspace, String serial) {
        return cards.remove(serial.strip()) != null;
    }

    @Override
    public LocalDate today() {
        return TODAY;
    }
}
