package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Sample;
import settlemark.session.DemoHands.Call;

class DemoRigTest {
    private static final long SEED = 20260701;

    private static DemoRig rig(long seed) {
        System.out.println("rig seed " + seed);
        return new DemoRig(new DemoRig.Settings(seed, true));
    }

    private static List<Chunk> record(long seed, long[] cutsNanos) {
        DemoRig rig = rig(seed);
        List<Chunk> chunks = new ArrayList<>();
        for (DemoInstrument instrument : DemoInstrument.values()) {
            rig.connect(instrument, chunks::add);
        }
        rig.advanceTo(30_000_000_000L);
        rig.call(Call.HIGH);
        for (long cut : cutsNanos) {
            rig.advanceTo(cut);
        }
        rig.advanceTo(150_000_000_000L);
        return chunks;
    }

    @Test
    void sameSeedGivesTheSameBytesHoweverTimeIsCut() {
        long[] cuts = new Random(SEED).longs(5000, 0, 150_000_000_000L).sorted().toArray();
        List<Chunk> whole = record(SEED, new long[0]);
        assertThat(whole).hasSizeGreaterThan(2000).isEqualTo(record(SEED, cuts));
        assertThat(whole).isNotEqualTo(record(SEED + 1, new long[0]));
    }

    @Test
    void chunksComeInOrderAndNeverFromTheFuture() {
        DemoRig rig = rig(SEED);
        List<Long> times = new ArrayList<>();
        long[] now = {0};
        for (DemoInstrument instrument : DemoInstrument.values()) {
            rig.connect(instrument, chunk -> {
                assertThat(chunk.timeNanos()).isLessThanOrEqualTo(now[0]);
                times.add(chunk.timeNanos());
            });
        }
        for (now[0] = 0; now[0] < 60_000_000_000L; now[0] += 33_000_000) {
            rig.advanceTo(now[0]);
        }
        assertThat(times).isSorted().hasSizeGreaterThan(1000);
    }

    @Test
    void bytesComeInPiecesThatAreNotFrames() {
        DemoRig rig = rig(SEED);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        List<Integer> lengths = new ArrayList<>();
        rig.connect(DemoInstrument.GAUGE, chunk -> {
            all.writeBytes(chunk.bytes());
            lengths.add(chunk.bytes().length);
        });
        rig.advanceTo(60_000_000_000L);
        String text = all.toString(StandardCharsets.US_ASCII);
        assertThat(text.lines().findFirst().orElseThrow()).matches("P1 \\+7\\.8\\d P2 [+-]0\\.0\\d B 87");
        long frames = text.lines().count();
        assertThat(lengths).hasSizeGreaterThan((int) frames);
        assertThat(lengths.stream().distinct().count()).isGreaterThan(10);
    }

    @Test
    void everythingSentDecodesAndLostFramesAreCounted() {
        Expected seen = new Expected(rig(SEED));
        seen.rig.call(Call.HIGH);
        seen.runTo(1800.05);
        assertThat(seen.rejected).isEmpty();
        for (DemoInstrument instrument : DemoInstrument.values()) {
            long sent = seen.rig.sentFrames(instrument);
            long lost = seen.rig.lostFrames(instrument);
            assertThat(seen.decoder(instrument).acceptedFrames()).isBetween(sent - 1, sent);
            assertThat(sent + lost).isBetween(17_995L, 18_001L);
            assertThat(lost).isBetween(10L, 250L);
        }
        assertThat(seen.decoder(DemoInstrument.AIR).missedFrames()).isEqualTo(seen.rig.lostFrames(DemoInstrument.AIR));
    }

    @Test
    void dropOutsAreBoundedAndCanBeTurnedOff() {
        Expected seen = new Expected(rig(SEED));
        seen.runTo(3600);
        for (Role role : List.of(Role.INLET, Role.SUPPLY)) {
            List<Sample> of = seen.samples.getOrDefault(role, List.of());
            double longest = 0;
            for (int i = 1; i < of.size(); i++) {
                longest =
                        Math.max(longest, (of.get(i).timeNanos() - of.get(i - 1).timeNanos()) / 1e9);
            }
            // Ten lost frames make a pause of 1.1 s; the reader's look adds up to 30 ms.
            assertThat(longest).isBetween(0.25, 1.14);
        }
        DemoRig whole = new DemoRig(new DemoRig.Settings(SEED, false));
        whole.advanceTo(600_000_000_000L);
        assertThat(whole.lostFrames(DemoInstrument.GAUGE)).isZero();
        assertThat(whole.sentFrames(DemoInstrument.GAUGE)).isBetween(5_999L, 6_000L);
    }

    /** Zeroed readings lie within the makers' accuracy of the truth; single ones within that and five sigma of noise. */
    @Test
    void readingsLieWithinAccuracyOfTheTruth() {
        for (long seed = SEED; seed < SEED + 5; seed++) {
            compareWithTruth(seed);
        }
    }

    private static void compareWithTruth(long seed) {
        Expected seen = new Expected(rig(seed));
        seen.rig.portsOpen(true);
        seen.runTo(60);
        Map<Role, Double> zeros = new EnumMap<>(Role.class);
        zeros.put(Role.INLET, seen.lastMean(Role.INLET, 300));
        zeros.put(Role.MANIFOLD, seen.lastMean(Role.MANIFOLD, 300));
        assertThat(zeros.get(Role.INLET)).isCloseTo(0.03, within(0.005));
        assertThat(zeros.get(Role.MANIFOLD)).isCloseTo(-0.02, within(0.005));
        seen.rig.portsOpen(false);
        for (Call call : new Call[] {Call.LOW, Call.HIGH, Call.OFF}) {
            seen.rig.call(call);
            seen.runTo(seen.rig.truth().timeNanos() / 1e9 + 1500);
            for (Role role : seen.samples.keySet()) {
                compare(seen, role, zeros.getOrDefault(role, 0.0), call);
            }
        }
    }

    private static void compare(Expected seen, Role role, double zero, Call call) {
        double truth = Expected.truth(seen.rig.truth(), role);
        double accuracy = Expected.accuracy(role, truth);
        double error = seen.lastMean(role, 100) - zero - truth;
        assertThat(Math.abs(error)).as("%s at %s, error %s", role, call, error).isLessThan(accuracy);
        List<Sample> of = seen.samples.getOrDefault(role, List.of());
        double noise = role == Role.INLET || role == Role.MANIFOLD ? 0.006 : 1.8 * Math.hypot(0.03, 0.05);
        for (Sample sample : of.subList(of.size() - 100, of.size())) {
            assertThat(Math.abs(sample.value() - zero - truth)).isLessThan(accuracy + 5 * noise + 0.01);
        }
    }

    @Test
    void secondPortReadsNegativeOnTheWireUnderPressure() {
        DemoRig rig = rig(SEED);
        rig.call(Call.LOW);
        rig.advanceTo(60_000_000_000L);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        rig.connect(DemoInstrument.GAUGE, chunk -> all.writeBytes(chunk.bytes()));
        rig.advanceTo(62_000_000_000L);
        assertThat(all.toString(StandardCharsets.US_ASCII)).contains(" P2 -1.4");
    }

    @Test
    void closedPortsShowTheTapsAndOpenPortsTheRoom() {
        Expected seen = new Expected(rig(SEED));
        seen.runTo(10);
        assertThat(seen.lastMean(Role.INLET, 20)).isCloseTo(7.8, within(0.08));
        seen.rig.portsOpen(true);
        seen.runTo(20);
        assertThat(seen.lastMean(Role.INLET, 20)).isCloseTo(0.03, within(0.01));
        assertThat(seen.rig.truth().inletInH2o()).isCloseTo(7.8, within(1e-9));
        assertThat(seen.rig.state().portsOpen()).isTrue();
    }

    @Test
    void handsAreSeenInTheStateAndTheTruth() {
        DemoRig rig = rig(SEED);
        rig.call(Call.HIGH);
        rig.cap(false);
        rig.turnScrew("high", 0.5);
        rig.turnScrew("low", -0.25);
        rig.otherAppliance(true);
        rig.advanceTo(5_000_000_000L);
        assertThat(rig.state().call()).isEqualTo(Call.HIGH);
        assertThat(rig.state().capOn()).isFalse();
        assertThat(rig.state().highTurns()).isCloseTo(0.5, within(1e-9));
        assertThat(rig.state().lowTurns()).isCloseTo(-0.25, within(1e-9));
        assertThat(rig.truth().otherFlowFt3PerHour()).isCloseTo(38.8, within(0.01));
        assertThatThrownBy(() -> rig.turnScrew("medium", 1)).hasMessageContaining("\"medium\"");
        assertThatThrownBy(() -> rig.turnScrew("low", Double.NaN)).hasMessageContaining("NaN");
    }

    @Test
    void anHourTakesWellUnderFiveSeconds() {
        DemoRig rig = rig(SEED);
        long[] bytes = {0};
        for (DemoInstrument instrument : DemoInstrument.values()) {
            rig.connect(instrument, chunk -> bytes[0] += chunk.bytes().length);
        }
        rig.call(Call.HIGH);
        long start = System.nanoTime();
        rig.advanceTo(3_600_000_000_000L);
        double seconds = (System.nanoTime() - start) / 1e9;
        System.out.println("an hour of the rig took " + seconds + " s for " + bytes[0] + " bytes");
        assertThat(bytes[0]).isGreaterThan(1_200_000);
        assertThat(seconds).isLessThan(5);
    }
}
