package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.decode.Rejected;
import settlemark.job.JobPlan;
import settlemark.job.SettledBy;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.LinkChange;
import settlemark.session.Rereading;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;
import settlemark.settle.ChannelReading;
import settlemark.settle.FromInstrument;
import settlemark.settle.PublishedRule;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.StageReading;

/** Workspaces that the stores of former formats wrote, kept as SQL: what they hold is the fixtures' everything. */
final class FormerFormatTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("old.settlemark");
    }

    @BeforeEach
    void writeTheOldWorkspaces() throws Exception {
        write("/store/format-1.sql", file());
        write("/store/format-2.sql", second());
        write("/store/format-3.sql", third());
        write("/store/format-4.sql", fourth());
    }

    private Path second() {
        return folder.resolve("second.settlemark");
    }

    private Path third() {
        return folder.resolve("third.settlemark");
    }

    private Path fourth() {
        return folder.resolve("fourth.settlemark");
    }

    static void write(String resource, Path file) throws Exception {
        String sql;
        try (InputStream in = Objects.requireNonNull(FormerFormatTest.class.getResourceAsStream(resource))) {
            sql = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String change : sql.strip().split(";\n", -1)) {
                statement.executeUpdate(change);
            }
        }
    }

    private static int format(Path file) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            return Schema.number(connection, "PRAGMA user_version");
        }
    }

    /** Links could not be noted then. */
    private static List<SessionEvent> everyEventThen() {
        return Fixtures.formerEvents().stream()
                .filter(e -> !(e instanceof SessionEvent.Link link && link.change() == LinkChange.NOTED))
                .toList();
    }

    /** With the plan as it was stored then, which the program's own may have left behind. */
    private static void assertIsTheJob(SessionHeader header) {
        SessionHeader now = Fixtures.job("job");
        JobPlan plan = header.plan().orElseThrow();
        assertThat(plan.key()).isEqualTo("two-stage-natural-gas");
        assertThat(plan.steps()).hasSize(11);
        assertThat(header)
                .isEqualTo(new SessionHeader(
                        now.key(),
                        now.title(),
                        now.startedAt(),
                        now.zone(),
                        now.pressureUnit(),
                        now.temperatureUnit(),
                        now.probes(),
                        header.plan(),
                        now.plate(),
                        now.version()));
    }

    private static void holdsAllOfIt(SqliteStore store) throws Exception {
        assertThat(store.sessions()).hasSize(2);
        assertIsTheJob(store.header(1));
        assertThat(store.header(2)).isEqualTo(Fixtures.log("log"));
        List<SessionEvent> events = new ArrayList<>();
        store.events(1, events::add);
        assertThat(events).isEqualTo(everyEventThen());
        assertThat(store.readings(1)).containsExactly(Fixtures.reading(9));
        List<Rejected> rejected = new ArrayList<>();
        store.rejected(1, 1, rejected::add);
        assertThat(rejected).containsExactly(new Rejected(7, 40, "checksum"));
        assertThat(store.sampleCount(2, 0)).isEqualTo(40);
        assertThat(store.samples(2, 1, 1, 0, Long.MAX_VALUE).values())
                .startsWith(Fixtures.block(1, 1, 0).values())
                .endsWith(Fixtures.block(1, 1, 1).values());
        assertThat(store.rereadings().of(1)).isEmpty();
    }

    @Test
    void openingForWritingBringsItUpInPlaceWithAllThatItHolds() throws Exception {
        assertThat(format(file())).isEqualTo(1);
        try (SqliteStore store = Fixtures.open(file())) {
            holdsAllOfIt(store);
            assertThat(store.lastIdentity("gauge")).isEmpty();
            // It takes what the former format had no place for.
            SessionEvent second = new SessionEvent.Bytes(1, new Chunk(3_000_000_000L, 2, new byte[] {1}));
            store.append(2, new WriteBatch(40, List.of(second), List.of(), List.of(), List.of(), 3_000_000_000L));
            List<SessionEvent> events = new ArrayList<>();
            store.events(2, events::add);
            assertThat(events).hasSize(41).endsWith(second);
            Rereading again = store.rereadings().begin(1, Fixtures.probes(), Instant.EPOCH, "test");
            store.rereadings().complete(again);
            store.begin(Fixtures.logOf("new", "usb:1209:0001:A1"));
            assertThat(store.lastIdentity("gauge")).isEqualTo("usb:1209:0001:A1");
            assertThat(store.rereadings().of(1)).containsExactly(again);
        }
        assertThat(format(file())).isEqualTo(Schema.MIGRATIONS.size());
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(store.sessions()).hasSize(3);
            assertThat(store.header(3)).isEqualTo(Fixtures.logOf("new", "usb:1209:0001:A1"));
        }
    }

    private static void secondHoldsAllOfIt(SqliteStore store) throws Exception {
        assertThat(store.sessions()).hasSize(3);
        assertIsTheJob(store.header(1));
        assertThat(store.header(2)).isEqualTo(Fixtures.logOf("device", "usb:1209:0001:A1"));
        assertThat(store.lastIdentity("gauge")).isEmpty();
        assertThat(events(store, 1)).isEqualTo(Fixtures.formerEvents());
        assertThat(events(store, 2)).containsExactly(new SessionEvent.Bytes(0, new Chunk(3, 2, new byte[] {1})));
        assertThat(store.readings(1)).containsExactly(Fixtures.reading(9));
        List<Rejected> rejected = new ArrayList<>();
        store.rejected(1, 1, rejected::add);
        assertThat(rejected).containsExactly(new Rejected(7, 40, "checksum"));
        List<SessionEvent> expected = new ArrayList<>();
        for (int n = 0; n < 3; n++) {
            expected.addAll(Fixtures.second(n).events());
        }
        assertThat(events(store, 3)).isEqualTo(expected);
        assertThat(store.samples(3, 1, 1, 0, Long.MAX_VALUE).size()).isEqualTo(30);
        assertThat(store.sessions().get(0).durationNanos()).isEqualTo(3_000_000_000L);
        Rereading again = store.rereadings().of(3).get(0);
        assertThat(store.rereadings().readings(again))
                .containsExactly(Fixtures.reading(Fixtures.time(4, 9)), Fixtures.reading(Fixtures.time(9, 9)));
        assertThat(store.rereadings().sampleCount(again, 0)).isEqualTo(40);
        assertThat(store.rereadings().samples(again, 1, 0, 0, Long.MAX_VALUE).values())
                .startsWith(Fixtures.block(1, 0, 4).values())
                .endsWith(Fixtures.block(1, 0, 9).values());
        assertThat(store.rereadings().of(1)).isEmpty();
    }

    private static List<SessionEvent> events(SqliteStore store, long session) throws Exception {
        List<SessionEvent> events = new ArrayList<>();
        store.events(session, events::add);
        return events;
    }

    @Test
    void theSecondFormatIsBroughtUpInPlaceTooWithItsRereadings() throws Exception {
        try (SqliteStore store = SqliteStore.openForReading(second(), Fixtures::profile)) {
            secondHoldsAllOfIt(store);
        }
        assertThat(format(second())).isEqualTo(2);
        try (SqliteStore store = Fixtures.open(second())) {
            secondHoldsAllOfIt(store);
            store.append(2, new WriteBatch(1, List.of(), List.of(), List.of(), List.of(), 4));
            Rereading next = store.rereadings().begin(1, Fixtures.probes(), Instant.EPOCH, "test");
            assertThat(next.number()).as("the half-made one is gone").isEqualTo(1);
        }
        assertThat(format(second())).isEqualTo(Schema.MIGRATIONS.size());
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + second())) {
            assertThat(Connections.quickCheck(connection)).isEmpty();
            assertThat(Schema.number(connection, "SELECT count(*) FROM pragma_foreign_key_check"))
                    .isZero();
        }
        try (SqliteStore store = Fixtures.open(second())) {
            secondHoldsAllOfIt(store);
        }
    }

    private static void thirdHoldsAllOfIt(SqliteStore store) throws Exception {
        assertThat(store.sessions()).hasSize(2);
        assertIsTheJob(store.header(1));
        assertThat(store.header(2)).isEqualTo(Fixtures.log("log"));
        assertThat(events(store, 1)).isEqualTo(Fixtures.formerEvents());
        assertThat(store.readings(1)).containsExactly(Fixtures.reading(9));
        assertThat(store.samples(2, 1, 1, 0, Long.MAX_VALUE).values())
                .startsWith(Fixtures.block(1, 1, 0).values())
                .endsWith(Fixtures.block(1, 1, 2).values());
        Rereading again = store.rereadings().of(2).get(0);
        assertThat(store.rereadings().readings(again)).containsExactly(Fixtures.reading(Fixtures.time(4, 9)));
        assertThat(store.settings().get("units.pressure")).contains("\"Pa\"");
    }

    @Test
    void theThirdFormatIsBroughtUpInPlaceAndTakesRulesAndSettings() throws Exception {
        try (SqliteStore store = SqliteStore.openForReading(third(), Fixtures::profile)) {
            thirdHoldsAllOfIt(store);
        }
        assertThat(format(third())).isEqualTo(3);
        SettleChoices set = new SettleChoices(Map.of(
                SettleKind.GAS, new SettleAdjustment(0.01, Double.NaN, 40, List.of(20.0, 40.0), 0, 12),
                SettleKind.STACK, new SettleAdjustment(Double.NaN, 3, Double.NaN, List.of(), Double.NaN, Double.NaN)));
        SessionHeader header = Fixtures.job("new")
                .withSettledBy(new SettledBy(Optional.of(PublishedRule.THREE_READINGS_3_DEGF), true));
        header = new SessionHeader(
                header.key(),
                header.title(),
                header.startedAt(),
                header.zone(),
                header.pressureUnit(),
                header.temperatureUnit(),
                header.probes(),
                header.plan().map(p -> p.withSettle(set)),
                header.plate(),
                header.version(),
                set);
        ChannelReading part = new ChannelReading(
                Role.STACK, 400, 1, 2, 0, Unit.FAHRENHEIT, 0, 9, true, "steady", "three-readings-3-degf");
        StageReading reading = new StageReading("found-low", "found", 9, false, "", List.of(part));
        try (SqliteStore store = Fixtures.open(third())) {
            thirdHoldsAllOfIt(store);
            long session = store.begin(header);
            store.append(session, new WriteBatch(0, List.of(), List.of(), List.of(), List.of(reading), 9));
            assertThat(store.header(session)).isEqualTo(header);
            assertThat(store.readings(session)).containsExactly(reading);
        }
        assertThat(format(third())).isEqualTo(Schema.MIGRATIONS.size());
    }

    private static ChannelReading byRule() {
        return new ChannelReading(
                Role.STACK, 400, 1, 2, 0, Unit.FAHRENHEIT, 0, 9, true, "steady", "three-readings-3-degf");
    }

    private static void fourthHoldsAllOfIt(SqliteStore store) throws Exception {
        assertThat(store.sessions()).hasSize(2);
        SettleChoices set = new SettleChoices(
                Map.of(SettleKind.GAS, new SettleAdjustment(0.01, Double.NaN, 40, List.of(20.0, 40.0), 0, 12)));
        assertThat(store.header(1).settle()).isEqualTo(set);
        assertThat(events(store, 1)).isEqualTo(Fixtures.formerEvents());
        assertThat(store.readings(1))
                .containsExactly(
                        Fixtures.reading(9), new StageReading("found-low", "found", 9, false, "", List.of(byRule())));
        assertThat(store.papers().notes(1)).hasSize(1);
        Rereading again = store.rereadings().of(2).get(0);
        assertThat(store.rereadings().readings(again)).containsExactly(Fixtures.reading(Fixtures.time(4, 9)));
        assertThat(store.settings().get("units.pressure")).contains("\"Pa\"");
        assertThat(store.instruments().all()).isEmpty();
    }

    @Test
    void theFourthFormatIsBroughtUpInPlaceAndTakesInstrumentsAndTheirCorrections() throws Exception {
        try (SqliteStore store = SqliteStore.openForReading(fourth(), Fixtures::profile)) {
            fourthHoldsAllOfIt(store);
        }
        assertThat(format(fourth())).isEqualTo(4);
        StageReading corrected = new StageReading(
                "left-low",
                "left",
                11,
                false,
                "",
                List.of(
                        byRule().correctedBy(new FromInstrument("A 17", -0.1 - 0.2, 0.01, "")),
                        byRule().correctedBy(FromInstrument.uncorrected("B", "outside \u00fc"))));
        try (SqliteStore store = Fixtures.open(fourth())) {
            fourthHoldsAllOfIt(store);
            store.append(
                    1,
                    new WriteBatch(
                            Fixtures.formerEvents().size(), List.of(), List.of(), List.of(), List.of(corrected), 11));
            assertThat(store.readings(1)).hasSize(3).endsWith(corrected);
            store.instruments().put(List.of(Fixtures.card()));
            assertThat(store.instruments().all()).extracting(k -> k.card()).containsExactly(Fixtures.card());
        }
        assertThat(format(fourth())).isEqualTo(Schema.MIGRATIONS.size());
    }

    @Test
    void anUpgradeThatFailsLeavesTheOldWorkspaceAsItWas() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + second());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("DELETE FROM event WHERE session = 3 AND sequence = 7");
        }
        assertThatThrownBy(() -> Fixtures.open(second()))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("of session 3 there are 19 of the events 0 to 19");
        assertThat(format(second())).isEqualTo(2);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + second())) {
            assertThat(Schema.number(connection, "SELECT count(*) FROM event WHERE session = 3"))
                    .isEqualTo(59);
        }
    }

    @Test
    void readingAloneNeedsNoUpgradeAndMakesNone() throws Exception {
        byte[] before = Files.readAllBytes(file());
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            holdsAllOfIt(store);
            assertThat(store.lastIdentity("gauge")).isEmpty();
            assertThat(store.devices()).isEmpty();
        }
        assertThat(format(file())).isEqualTo(1);
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
    }

    @Test
    void theUpgradedTablesAreThoseOfAFreshWorkspace() throws Exception {
        Fixtures.open(file()).close();
        Path fresh = folder.resolve("fresh.settlemark");
        Fixtures.open(fresh).close();
        assertThat(tables(file())).isEqualTo(tables(fresh)).hasSizeGreaterThan(15);
    }

    private static List<String> tables(Path file) throws Exception {
        List<String> tables = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                var row = statement.executeQuery(
                        "SELECT name || ' ' || coalesce(sql, '') FROM sqlite_schema ORDER BY type, name")) {
            while (row.next()) {
                tables.add(row.getString(1));
            }
        }
        return tables;
    }
}
