package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.session.LinkChange;
import settlemark.session.ProbeAddress;

/** A probe that sends garbage: its next good value is there at once, and the other probe loses nothing. */
@Timeout(120)
final class BleGarbageTest {
    private static final Profile ROOM = ProfileLibrary.get("ble-environment");
    /** Longer than a characteristic may be (Bluetooth Core Specification, volume 3, part F, 3.2.9: 512 bytes). */
    private static final int MOST_BYTES = 700;

    private static final String THIRD = "C0:FF:EE:00:00:03";

    /** The same with the length of its first value said, which the shipped one leaves to the standard's later versions. */
    private static final Profile STRICT = ProfileReader.read(
                    "strict.yaml",
                    ROOM.text()
                            .replaceFirst(
                                    "uuid: \"2A6D\"(.*)\\R",
                                    "uuid: \"2A6D\"$1\n    framing: {packet: {maximum-bytes: 4}}\n")
                            .getBytes(StandardCharsets.UTF_8))
            .orThrow();

    private static final byte[] GOOD = {0x02, 0x76, 0x0F, 0x00};

    private final Gathered noisy = new Gathered(ROOM);
    private final BleHeard other = new BleHeard();
    private BleBench bench;
    private FakeDevice room;
    private FakeDevice third;
    private FakeCharacteristic steady;

    @BeforeEach
    void setUp() throws Exception {
        bench = new BleBench();
        room = bench.service.device(BleBench.ADDRESS, "Room");
        third = bench.service.device(THIRD, "Strict");
        for (String uuid : List.of("2a6d", "2a6e", "2a6f")) {
            room.characteristic(BleProfiles.ESS, BleProfiles.uuid(uuid));
            third.characteristic(BleProfiles.ESS, BleProfiles.uuid(uuid));
        }
        steady = bench.probe(BleBench.OTHER).characteristics.get(0);
        bench.host.open(new ProbeAddress(ProbeAddress.BLE, BleBench.ADDRESS), ROOM, Fixtures.ticker(), noisy);
        bench.open(BleBench.OTHER, BleBench.pressure(Double.NaN), other);
    }

    @AfterEach
    void tearDown() throws Exception {
        bench.close();
    }

    /** Pieces of garbage to three values in turn, a steady value of the other beside each, and at the end one good value. */
    private void garble(long seed, int pieces, double perSecond) {
        Random random = new Random(seed);
        long start = System.nanoTime();
        int sent = 0;
        for (int i = 0; i < pieces; i++) {
            byte[] bytes = new byte[random.nextInt(4) == 0 ? random.nextInt(MOST_BYTES) : random.nextInt(24)];
            random.nextBytes(bytes);
            long due = start + (long) (i / perSecond * 1e9);
            while (System.nanoTime() < due) {
                java.util.concurrent.locks.LockSupport.parkNanos(due - System.nanoTime());
            }
            room.characteristics.get(i % 3).send(bytes);
            sent += bytes.length > 0 ? 1 : 0;
            steady.send(BleHeard.bytes(i));
        }
        room.characteristics.get(0).send(GOOD);
        int all = sent + 1;
        Await.until(
                "the good value at once, seed " + seed,
                5_000,
                () -> noisy.nanos().size() == all);
        List<String> pressures = noisy.of("air-pressure");
        assertThat(pressures.get(pressures.size() - 1)).as("seed %d", seed).isEqualTo("101325.0");
        Await.until("all of the other, seed " + seed, 20_000, () -> other.count() == pieces);
        assertThat(other.numbers(0))
                .isEqualTo(IntStream.range(0, pieces).boxed().toList());
        assertThat(noisy.changes()).containsExactly(LinkChange.UP);
        assertThat(other.changes()).containsExactly(LinkChange.UP);
        assertThat(bench.service.calls().stream().filter(c -> c.startsWith("StopNotify")))
                .as("nothing was asked anew")
                .isEmpty();
    }

    @Test
    void theNextGoodValueOfTheSameProbeIsThereAtOnceAndTheOtherLosesNothing() throws Exception {
        garble(20_261_126, 3000, 1e6);
    }

    /** The rate at which a good value was once missed on a real stack, a few hundred pieces each. */
    @Tag("long")
    @Test
    void alsoAtTheRateOfARealRadio() throws Exception {
        garble(20_261_125, 600, 40);
    }

    @Test
    void eachFrameThatIsTooLongOrTooShortIsRefusedWithItsReasonAndTheGoodOnesBetweenThemAreNot() throws Exception {
        Gathered strict = new Gathered(STRICT);
        bench.host.open(new ProbeAddress(ProbeAddress.BLE, THIRD), STRICT, Fixtures.ticker(), strict);
        int[] lengths = {1, 2, 3, 5, 20, 64, 244, 509, 512, 513, 700, 4096};
        for (int i = 0; i < lengths.length; i++) {
            third.characteristics.get(0).send(new byte[lengths[i]]);
            third.characteristics.get(0).send(GOOD);
            steady.send(BleHeard.bytes(i));
        }
        Await.until("all good ones", 5_000, () -> strict.of("air-pressure").size() >= lengths.length);
        assertThat(strict.of("air-pressure")).hasSize(lengths.length).containsOnly("101325.0");
        assertThat(strict.rejected()).hasSize(lengths.length);
        for (int i = 0; i < lengths.length; i++) {
            String reason = strict.rejected().get(i);
            assertThat(reason)
                    .startsWith("pressure: ")
                    .contains(
                            lengths[i] > 4
                                    ? "the packet has " + lengths[i] + " bytes where a frame has at most 4"
                                    : lengths[i] + " byte");
        }
        Await.until("all of the other", 5_000, () -> other.count() == lengths.length);
        assertThat(other.numbers(0))
                .isEqualTo(IntStream.range(0, lengths.length).boxed().toList());
        assertThat(strict.changes()).containsExactly(LinkChange.UP);
        assertThat(other.changes()).containsExactly(LinkChange.UP);
    }
}
