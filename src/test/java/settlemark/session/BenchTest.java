package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.decode.Encoder;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.settle.SettlePhase;
import settlemark.settle.SettleState;

class BenchTest {
    private static final Profile AIR = ProfileLibrary.get("demo-air");
    private static final long TENTH = 100_000_000L;

    private final SessionHeader header = new SessionHeader(
            "key",
            "bench",
            Instant.EPOCH,
            ZoneOffset.UTC,
            Unit.INCH_OF_WATER,
            Unit.FAHRENHEIT,
            List.of(probe("one", Map.of(AIR.channels().get(0).name(), Role.SUPPLY)), probe("two", Map.of())),
            Optional.empty(),
            Optional.empty(),
            "test");
    private final LiveSession session = new LiveSession(header);
    private final Bench bench = new Bench(header);

    private static ProbeSetup probe(String name, Map<String, Role> roles) {
        return new ProbeSetup(name, new ProbeAddress(ProbeAddress.SERIAL, "/dev/" + name), AIR, roles);
    }

    private BenchView view() {
        return bench.view(session.snapshot(Instant.EPOCH));
    }

    private void bytes(int probe, long at, double value) {
        Encoder encoder = new Encoder(AIR);
        double[] values = new double[AIR.channels().size()];
        SampleStatus[] good = new SampleStatus[values.length];
        java.util.Arrays.fill(values, value);
        java.util.Arrays.fill(good, SampleStatus.OK);
        session.take(new SessionEvent.Bytes(probe, new Chunk(at, encoder.encode(values, good))));
    }

    @Test
    void everyChannelIsARowWithARoleOrWithout() {
        session.watchedBy(bench);
        bytes(0, TENTH, 20.5);
        bytes(1, TENTH, 21.5);
        List<BenchView.Row> rows = view().rows();
        assertThat(rows).hasSize(2 * AIR.channels().size());
        assertThat(rows.get(0).role()).contains(Role.SUPPLY);
        assertThat(rows.get(0).unit())
                .as("the profile's")
                .isEqualTo(AIR.channels().get(0).unit());
        assertThat(rows.get(0).value()).isCloseTo(20.5, within(0.06));
        BenchView.Row other = rows.get(AIR.channels().size());
        assertThat(other.role()).isEmpty();
        assertThat(other.value()).isCloseTo(21.5, within(0.06));
        assertThat(other.probe()).isEqualTo(1);
    }

    @Test
    void withoutASampleNothingIsKnownAndAfterThreePeriodsItIsOld() {
        assertThat(view().rows().get(0).timeNanos()).isNegative();
        assertThat(view().rows().get(0).spark().low()).isNaN();
        bench.sample(0, 0, TENTH, 20, SampleStatus.OK);
        session.passTo(200 * TENTH);
        assertThat(view().rows().get(0).stale()).isTrue();
    }

    @Test
    void theLastMinuteIsKeptInHalfSecondsAndAGapStaysEmpty() {
        for (int i = 0; i <= 1000; i++) {
            boolean gap = i >= 600 && i < 700;
            if (!gap) {
                bench.sample(0, 0, i * TENTH, i % 2 == 0 ? i : i + 100, SampleStatus.OK);
            }
        }
        session.passTo(1000 * TENTH);
        Spark spark = view().rows().get(0).spark();
        assertThat(spark.lows()).hasSize(Spark.COLUMNS);
        assertThat(spark.lows()[Spark.COLUMNS - 1]).as("the newest half second").isEqualTo(1000);
        assertThat(spark.lows()[Spark.COLUMNS - 2]).isEqualTo(996);
        assertThat(spark.highs()[Spark.COLUMNS - 2]).isEqualTo(1099);
        // From 60 s to 70 s of 100: 20 columns, the first of them some 40 s before the end.
        assertThat(java.util.Arrays.stream(spark.lows()).filter(Double::isNaN).count())
                .isEqualTo(20);
        assertThat(spark.low()).as("nothing older than a minute").isGreaterThanOrEqualTo(400);
    }

    @Test
    void aChannelWithoutARoleSettlesByWhatItMeasuresAndLosesItWithItsLink() {
        session.watchedBy(bench);
        for (int i = 0; i < 4000; i++) {
            bench.sample(1, 0, i * TENTH, 20, SampleStatus.OK);
        }
        session.passTo(4000 * TENTH);
        BenchView.Row row = view().rows().get(AIR.channels().size());
        assertThat(row.state()).isNotNull();
        assertThat(row.state().phase()).isEqualTo(SettlePhase.SETTLED);
        session.take(new SessionEvent.Link(1, 4000 * TENTH, LinkChange.LOST, "unplugged"));
        BenchView.Row lost = view().rows().get(AIR.channels().size());
        assertThat(lost.state()).isNotNull().returns(false, SettleState::settled);
        assertThat(lost.settledUntilNanos()).isGreaterThan(3000 * TENTH);
    }

    @Test
    void aRowIsShownInOtherUnits() {
        bench.sample(0, 0, TENTH, 20, SampleStatus.OK);
        bench.sample(0, 0, 2 * TENTH, 30, SampleStatus.OK);
        BenchView.Row row = new SnapshotUnits(Unit.PASCAL, Unit.FAHRENHEIT)
                .row(view().rows().get(0));
        // 30 degC is 86 degF by definition, 20 degC is 68.
        assertThat(row.value()).isCloseTo(86, within(1e-9));
        assertThat(row.spark().low()).isCloseTo(68, within(1e-9));
        assertThat(row.spark().high()).isCloseTo(86, within(1e-9));
        assertThat(row.unit()).isEqualTo(Unit.FAHRENHEIT);
    }
}
