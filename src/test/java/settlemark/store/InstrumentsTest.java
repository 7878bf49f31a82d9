package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.measure.Unit;
import settlemark.session.CheckReport;
import settlemark.session.Damage;
import settlemark.session.Instruments.Kept;
import settlemark.session.LastUse;
import settlemark.session.RepairReport;

final class InstrumentsTest {
    private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private static InstrumentCard card(double top) {
        return new InstrumentCard(
                "A \"17\" \u00fc",
                "blue gauge",
                "two-port",
                Optional.of(LocalDate.of(2025, 3, 14)),
                Optional.of(LocalDate.of(2026, 3, 14)),
                List.of(
                        new CorrectionPoint("", 0, 0, 0.01, Unit.INCH_OF_WATER),
                        new CorrectionPoint("", top, top + 0.1, 0.02, Unit.inchOfWaterAt60F()),
                        new CorrectionPoint("air", -0.0, 0.1 + 0.2, 0, Unit.CELSIUS),
                        new CorrectionPoint("air", 100, 101, 1e-320, Unit.CELSIUS)));
    }

    private static LastUse used(double battery) {
        return new LastUse(
                battery, Optional.of(NOON), List.of(new LastUse.Zero("p1", 0.012, Unit.INCH_OF_WATER, NOON, "job")));
    }

    @Test
    void anInstrumentStaysAsItWasEnteredAndKeepsItsUseWhereItIsEnteredAgain() throws Exception {
        InstrumentCard bare = InstrumentCard.unknown("B", "", "");
        try (SqliteStore store = Fixtures.open(file())) {
            store.instruments().put(List.of(card(5), bare));
            store.instruments().used(card(5).serial(), used(64));
            store.instruments().used("nobody's", used(1));
            store.instruments().put(List.of(card(10)));
        }
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(store.instruments().all())
                    .containsExactly(new Kept(card(10), used(64)), new Kept(bare, LastUse.NEVER));
            assertThat(store.instruments().find(" " + card(5).serial() + " ")).contains(new Kept(card(10), used(64)));
            assertThat(store.instruments().find("C")).isEmpty();
            assertThatThrownBy(() -> store.instruments().put(List.of(bare))).isInstanceOf(IllegalStateException.class);
        }
        try (SqliteStore store = Fixtures.open(file())) {
            assertThat(store.instruments().remove("B")).isTrue();
            assertThat(store.instruments().remove("B")).isFalse();
            assertThat(store.instruments().remove(card(5).serial())).isTrue();
            assertThat(store.instruments().all()).isEmpty();
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
            assertThat(Schema.number(connection, "SELECT count(*) FROM correction_point"))
                    .isZero();
            assertThat(Schema.number(connection, "SELECT count(*) FROM instrument_zero"))
                    .isZero();
        }
    }

    private void damage(String change) throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            store.instruments().put(List.of(card(5), InstrumentCard.unknown("B", "", "")));
            store.instruments().used("B", used(20));
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(change)).isEqualTo(1);
        }
    }

    @Test
    void aPointThatWasAlteredIsFoundAndTheRepairedWorkspaceCorrectsNothingByIt() throws Exception {
        damage("UPDATE correction_point SET unit = 'furlong' WHERE position = 1");
        CheckReport report = WorkspaceCheck.of(file(), Fixtures::profile);
        assertThat(report.damage()).extracting(Damage::words).anyMatch(w -> w.contains("furlong"));
        Path repaired = folder.resolve("r.settlemark");
        RepairReport made = new WorkspaceTools(Fixtures::profile).repair(file(), repaired, NOON);
        assertThat(made.lost())
                .extracting(Damage::words)
                .anyMatch(w -> w.contains("correction points of instrument A"));
        try (SqliteStore store = Fixtures.open(repaired)) {
            List<Kept> all = store.instruments().all();
            assertThat(all).extracting(k -> k.card().serial()).containsExactly(card(5).serial(), "B");
            assertThat(all.get(0).card().points()).isEmpty();
            assertThat(all.get(0).card().due()).isEqualTo(card(5).due());
            assertThat(all.get(1).lastUse()).isEqualTo(used(20));
        }
    }

    @Test
    void aDayThatIsNoneIsFoundAndNamed() throws Exception {
        damage("UPDATE instrument SET due = '2026-02-30' WHERE serial = 'B'");
        assertThat(WorkspaceCheck.of(file(), Fixtures::profile).damage())
                .extracting(Damage::words)
                .anyMatch(w -> w.contains("2026-02-30"));
        Path repaired = folder.resolve("r.settlemark");
        assertThat(new WorkspaceTools(Fixtures::profile)
                        .repair(file(), repaired, NOON)
                        .lost())
                .extracting(Damage::words)
                .anyMatch(w -> w.contains("instrument B"));
        try (SqliteStore store = Fixtures.open(repaired)) {
            assertThat(store.instruments().all()).extracting(Kept::card).containsExactly(card(5));
        }
    }
}
