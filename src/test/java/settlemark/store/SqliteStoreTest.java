package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.codec.PackedRows;
import settlemark.decode.Rejected;
import settlemark.job.Act;
import settlemark.measure.Chunk;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore.Summary;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

final class SqliteStoreTest {
    private static final long ALWAYS = Long.MAX_VALUE;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private static WriteBatch events(long first, List<SessionEvent> events) {
        return new WriteBatch(first, events, List.of(), List.of(), List.of(), 5);
    }

    private static WriteBatch samples(List<SampleBlock> samples) {
        return new WriteBatch(0, List.of(), samples, List.of(), List.of(), 5);
    }

    @Test
    void aSessionsMarkIsAnotherOneOnceMoreIsStoredOfItAndOnlyThen() throws StoreException {
        List<String> marks = new ArrayList<>();
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.job("job"));
            marks.add(store.mark(1));
            store.append(1, Fixtures.second(0));
            marks.add(store.mark(1));
            store.append(1, Fixtures.second(1));
            marks.add(store.mark(1));
            store.end(1, 3 * Fixtures.SECOND);
            marks.add(store.mark(1));
            assertThat(marks).doesNotHaveDuplicates().allMatch(m -> m.length() == 32);
            store.begin(Fixtures.job("other"));
            store.append(2, Fixtures.second(0));
            assertThat(store.mark(1)).as("another session").isEqualTo(marks.get(3));
            assertThat(store.mark(2)).isNotIn(marks);
        }
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(store.mark(1)).isEqualTo(marks.get(3));
        }
        try (SqliteStore store = Fixtures.open(file())) {
            store.reopen(1);
            assertThat(store.mark(1)).isNotEqualTo(marks.get(3));
        }
    }

    @Test
    void aHeaderWithEveryOptionalComesBackEqualAfterReopening() throws StoreException {
        SessionHeader job = Fixtures.job("job");
        SessionHeader log = Fixtures.log("log");
        try (SqliteStore store = Fixtures.open(file())) {
            assertThat(store.begin(job)).isEqualTo(1);
            assertThat(store.begin(log)).isEqualTo(2);
            assertThat(store.header(1)).isEqualTo(job);
        }
        try (SqliteStore store = Fixtures.open(file())) {
            SessionHeader again = store.header(1);
            assertThat(again).isEqualTo(job);
            assertThat(store.header(2)).isEqualTo(log);
            // Units are equal by their code; the factors behind the annotated ones must be the same too.
            assertThat(again.pressureUnit().to(Unit.PASCAL).slope()).isEqualTo(248.840);
            assertThat(again.plate()
                            .orElseThrow()
                            .stages()
                            .get(1)
                            .unit()
                            .to(Unit.PASCAL)
                            .slope())
                    .isEqualTo(249.082);
            assertThat(again.plate()
                            .orElseThrow()
                            .rise()
                            .unit()
                            .to(Unit.CELSIUS.difference())
                            .apply(18))
                    .isCloseTo(10, org.assertj.core.api.Assertions.within(1e-12));
        }
    }

    @Test
    void whatStaysTheSameOfAProbeComesBackAndTheNewestSessionWithItsNameCounts() throws StoreException {
        SessionHeader first = Fixtures.logOf("first", "usb:1209:0001:A1");
        try (SqliteStore store = Fixtures.open(file())) {
            assertThat(store.lastIdentity("gauge")).isEmpty();
            store.begin(first);
            assertThat(store.lastIdentity("gauge")).isEqualTo("usb:1209:0001:A1");
            assertThat(store.lastIdentity("air")).isEmpty();
            store.begin(Fixtures.logOf("second", "usb:1209:0001:\u00dc \"2\""));
        }
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(store.header(1)).isEqualTo(first);
            assertThat(store.header(1).probes().get(0).identity()).isEqualTo("usb:1209:0001:A1");
            assertThat(store.lastIdentity("gauge")).isEqualTo("usb:1209:0001:\u00dc \"2\"");
        }
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("of devices that are not known"));
            assertThat(store.lastIdentity("gauge")).isEmpty();
        }
    }

    @Test
    void aRealProfileIsReadAgainFromItsStoredText() throws Exception {
        byte[] document = """
                language: 1
                id: line-gauge
                name: Gauge, für Proben
                framing:
                  line: {end: "\\r\\n", maximum-bytes: 64}
                columns: {separator: " ", count: 1}
                fields:
                  - {name: a, column: 0, type: text, decimals: 2, plus: true}
                channels:
                  - {id: port-1, label: A, field: a, unit: "[in_i'H2O]"}
                """.getBytes(StandardCharsets.UTF_8);
        Profile profile = ProfileReader.read("line-gauge.yaml", document).orThrow();
        SessionHeader plain = Fixtures.log("log");
        SessionHeader header = new SessionHeader(
                "log",
                "Log",
                plain.startedAt(),
                plain.zone(),
                plain.pressureUnit(),
                plain.temperatureUnit(),
                List.of(new ProbeSetup("g", new ProbeAddress("serial", "/dev/ttyS0"), profile, Map.of())),
                plain.plan(),
                plain.plate(),
                plain.version());
        Function<String, Profile> reading = text -> ProfileReader.read("stored", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        try (SqliteStore store = SqliteStore.open(WorkspacePlace.chosen(file()), reading)) {
            assertThat(store.header(store.begin(header))).isEqualTo(header);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE profile SET text = 'language: 99'");
        }
        try (SqliteStore store = SqliteStore.open(WorkspacePlace.chosen(file()), reading)) {
            assertThatThrownBy(() -> store.header(1))
                    .isInstanceOfSatisfying(
                            StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED))
                    .hasMessageContaining("profile line-gauge of session 1")
                    .hasMessageContaining("cannot be understood");
            assertThat(store.sessions()).hasSize(1);
        }
    }

    @Test
    void everyKindOfEventAndActComesBackEqualAndInOrder() throws StoreException {
        List<Class<?>> kinds = List.of(Act.class.getPermittedSubclasses());
        assertThat(Fixtures.everyAct()).extracting(Object::getClass).containsAll(List.copyOf(kinds));
        List<SessionEvent> events = Fixtures.everyEvent();
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.job("job"));
            store.append(session, events(0, events.subList(0, 3)));
            store.append(session, events(3, events.subList(3, events.size())));
            List<SessionEvent> back = new ArrayList<>();
            store.events(session, back::add);
            assertThat(back).isEqualTo(events);
        }
    }

    @Test
    void manyPagesOfEventsComeBackInOrder() throws StoreException {
        List<SessionEvent> events = new ArrayList<>();
        for (int i = 0; i < 5000; i++) {
            events.add(new SessionEvent.Bytes(i % 2, new Chunk(i, new byte[] {(byte) i, (byte) (i >> 8)})));
        }
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            store.append(session, events(0, events));
            List<SessionEvent> back = new ArrayList<>();
            store.events(session, back::add);
            assertThat(back).isEqualTo(events);
        }
    }

    @Test
    void readingsComeBackEqualWithNanAndTheSignOfZero() throws StoreException {
        WriteBatch batch = new WriteBatch(
                0, List.of(), List.of(), List.of(), List.of(Fixtures.reading(77), Fixtures.reading(78)), 78);
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.job("job"));
            store.append(session, batch);
            assertThat(store.readings(session)).isEqualTo(batch.readings());
        }
    }

    @Test
    void valuesComeBackBitForBitWithTheirStatus() throws StoreException {
        double[] values = {
            0.0,
            -0.0,
            Double.NaN,
            Double.longBitsToDouble(0x7ff8_0000_0000_1234L),
            Double.longBitsToDouble(0xfff0_0000_0000_0001L),
            Double.MIN_VALUE,
            Double.NEGATIVE_INFINITY
        };
        byte[] statuses = {0, 1, 2, 3, 4, 5, 0};
        long[] times = {0, 1, 1, 5_000_000_000L, 5_000_000_001L, Long.MAX_VALUE - 1, Long.MAX_VALUE};
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            store.append(session, samples(List.of(new SampleBlock(1, 0, times, values, statuses))));
            SampleBlock back = store.samples(session, 1, 0, 0, ALWAYS);
            assertThat(back.timesNanos()).isEqualTo(times);
            assertThat(back.statuses()).isEqualTo(statuses);
            assertThat(Arrays.stream(back.values())
                            .mapToLong(Double::doubleToRawLongBits)
                            .toArray())
                    .isEqualTo(Arrays.stream(values)
                            .mapToLong(Double::doubleToRawLongBits)
                            .toArray());
        }
    }

    @Test
    void aRangeOfSamplesIsExactAtBothEnds() throws StoreException {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        List<long[]> kept = new ArrayList<>();
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            long time = 0;
            for (int batch = 0; batch < 60; batch++) {
                List<SampleBlock> blocks = new ArrayList<>();
                for (int part = random.nextInt(3); part > 0; part--) {
                    long[] times = new long[random.nextInt(4)];
                    for (int i = 0; i < times.length; i++) {
                        // now and then a probe that dates its own samples steps back
                        time = Math.max(0, time + random.nextInt(5) - (random.nextInt(9) == 0 ? 3 : 0));
                        times[i] = time;
                        kept.add(new long[] {time, kept.size()});
                    }
                    double[] values = new double[times.length];
                    Arrays.setAll(values, i -> kept.size() - times.length + i);
                    blocks.add(new SampleBlock(0, 1, times, values, new byte[times.length]));
                    blocks.add(new SampleBlock(0, 0, times, new double[times.length], new byte[times.length]));
                }
                store.append(session, samples(blocks));
            }
            assertThat(store.sampleCount(session, 0)).isEqualTo(2L * kept.size());
            kept.sort((a, b) -> Long.compare(a[0], b[0]));
            for (int trial = 0; trial < 200; trial++) {
                long from = random.nextInt((int) time + 4) - 2L;
                long to = random.nextInt((int) time + 4) - 2L;
                List<long[]> expected =
                        kept.stream().filter(s -> s[0] >= from && s[0] <= to).toList();
                SampleBlock back = store.samples(session, 0, 1, from, to);
                assertThat(back.timesNanos())
                        .isEqualTo(expected.stream().mapToLong(s -> s[0]).toArray());
                assertThat(back.values())
                        .isEqualTo(expected.stream().mapToDouble(s -> s[1]).toArray());
            }
        }
    }

    @Test
    void refusedFramesAreKept() throws Exception {
        WriteBatch batch = new WriteBatch(
                0,
                List.of(),
                List.of(),
                List.of(
                        new WriteBatch.ProbeRejected(1, new Rejected(7, 40, "checksum")),
                        new WriteBatch.ProbeRejected(1, new Rejected(7, 40, "too long"))),
                List.of(),
                9);
        try (SqliteStore store = Fixtures.open(file())) {
            store.append(store.begin(Fixtures.log("log")), batch);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT group_concat(probe || ' ' || time_nanos || ' ' || stream_offset || ' ' || reason, ';')"
                                + " FROM rejected")) {
            assertThat(row.getString(1)).isEqualTo("1 7 40 checksum;1 7 40 too long");
        }
    }

    @Test
    void theListIsNewestFirstAndSaysWhatWasCutOff() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            long first = store.begin(Fixtures.log("first"));
            long second = store.begin(Fixtures.job("second"));
            store.append(first, Fixtures.second(0));
            store.append(first, Fixtures.second(1));
            store.end(first, 2_500_000_000L);
            store.append(second, Fixtures.second(0));
            Summary cutOff = new Summary(
                    second,
                    "second",
                    Fixtures.job("second").title(),
                    Fixtures.job("second").startedAt(),
                    false,
                    true,
                    1_000_000_000L);
            assertThat(store.sessions()).hasSize(2).first().isEqualTo(cutOff);
            assertThat(store.sessions().get(1).durationNanos()).isEqualTo(2_500_000_000L);
            assertThat(store.sessions().get(1).ended()).isTrue();
            assertThat(store.find("second")).contains(cutOff);
            assertThat(store.find(Long.toString(second))).contains(cutOff);
            assertThat(store.find("third")).isEmpty();
            assertThat(store.find("3")).isEmpty();
        }
    }

    @Test
    void aSessionGoesOnAfterReopening() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            store.append(session, Fixtures.second(0));
        }
        try (SqliteStore store = Fixtures.open(file())) {
            store.append(1, Fixtures.second(1));
            assertThat(store.sampleCount(1, 0)).isEqualTo(40);
            assertThat(store.samples(1, 1, 1, 0, ALWAYS).size()).isEqualTo(20);
        }
    }

    @Test
    void aBatchThatDoesNotFollowIsRefusedAndNothingOfItStored() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            store.append(session, Fixtures.second(0));
            assertThatThrownBy(() -> store.append(session, Fixtures.second(2)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("goes on with event 20")
                    .hasMessageContaining("begins with event 40");
            assertThatThrownBy(() -> store.append(session, samples(List.of(Fixtures.block(2, 0, 0)))))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> store.append(99, Fixtures.second(0)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("no session 99");
            store.end(session, 5);
            assertThatThrownBy(() -> store.append(session, Fixtures.second(1)))
                    .isInstanceOf(IllegalStateException.class);
            assertThat(store.sampleCount(session, 0)).isEqualTo(20);
        }
    }

    @Test
    void aKeyIsTakenOnce() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("twice"));
            assertThatThrownBy(() -> store.begin(Fixtures.job("twice")))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("already has a session \"twice\"");
            assertThat(store.sessions()).hasSize(1);
        }
    }

    @Test
    void aProfileIsStoredOnceAndMustStillBeTheSameText() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("one"));
            store.begin(Fixtures.log("two"));
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            assertThat(Schema.number(connection, "SELECT count(*) FROM profile"))
                    .isEqualTo(2);
            statement.executeUpdate("UPDATE profile SET text = replace(text, 'port-1', 'port-9') WHERE id = 'gauge'");
        }
        try (SqliteStore store = Fixtures.open(file())) {
            assertThatThrownBy(() -> store.header(1))
                    .isInstanceOfSatisfying(
                            StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED))
                    .hasMessageContaining("profile gauge of session 1")
                    .hasMessageContaining(Fixtures.digest(Fixtures.GAUGE));
        }
    }

    @Test
    void anEventThatCannotBeUnderstoodOrIsMissingIsNamed() throws Exception {
        List<SessionEvent> events = Fixtures.everyEvent();
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("one"));
            store.append(session, events(0, events));
            store.end(session, 9);
        }
        List<PackedRows.Row> rows = new ArrayList<>(EventRows.rows(events, 0, RawBytes.KEPT));
        rows.set(8, new PackedRows.Row(8, 4, 2, 0, 0, "{\"kind\": \"dance\"}".getBytes(StandardCharsets.UTF_8)));
        putEvents(rows);
        try (SqliteStore store = Fixtures.open(file())) {
            assertThatThrownBy(() -> store.events(1, e -> {}))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("event 8 of session 1")
                    .hasMessageContaining("dance");
        }
        rows.remove(3);
        putEvents(rows);
        try (SqliteStore store = Fixtures.open(file())) {
            assertThatThrownBy(() -> store.events(1, e -> {})).hasMessageContaining("event 3 is missing");
        }
        putEvents(rows.subList(0, 2));
        try (SqliteStore store = Fixtures.open(file())) {
            assertThatThrownBy(() -> store.events(1, e -> {})).hasMessageContaining("event 2 is missing");
        }
    }

    private void putEvents(List<PackedRows.Row> rows) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                PreparedStatement update = connection.prepareStatement("UPDATE event_block SET block = ?")) {
            update.setBytes(1, PackedRows.pack(rows, false));
            assertThat(update.executeUpdate()).isEqualTo(1);
        }
    }

    @Test
    void aClosedStoreAnswersNothing() throws StoreException {
        SqliteStore store = Fixtures.open(file());
        store.close();
        assertThatThrownBy(store::sessions)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("closed");
        store.close();
    }
}
