package settlemark.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import settlemark.session.SampleBlock;

final class PackedGroupsTest {
    private static SampleBlock block(int channel, double[] values, byte... statuses) {
        long[] times = new long[values.length];
        Arrays.setAll(times, i -> i * 10L);
        return new SampleBlock(0, channel, times, values, Arrays.copyOf(statuses, values.length));
    }

    private static void assertSame(Groups back, Groups groups) {
        assertThat(back.lows()).isEqualTo(groups.lows());
        assertThat(back.highs()).isEqualTo(groups.highs());
        assertThat(back.counts()).isEqualTo(groups.counts());
        assertThat(Blocks.bits(back.mins())).isEqualTo(Blocks.bits(groups.mins()));
        assertThat(Blocks.bits(back.maxs())).isEqualTo(Blocks.bits(groups.maxs()));
        assertThat(Blocks.bits(back.firsts())).isEqualTo(Blocks.bits(groups.firsts()));
        assertThat(Blocks.bits(back.lasts())).isEqualTo(Blocks.bits(groups.lasts()));
        for (int i = 0; i < groups.size(); i++) {
            if (Double.isFinite(groups.means()[i])) {
                double scale = Math.max(Math.abs(groups.mins()[i]), Math.abs(groups.maxs()[i]));
                assertThat(back.means()[i]).isCloseTo(groups.means()[i], within(1e-12 * scale));
            } else {
                assertThat(Double.compare(back.means()[i], groups.means()[i])).isZero();
            }
        }
    }

    @Test
    void whatIsNoMeasurementDoesNotCount() {
        Groups groups =
                Groups.of(block(0, new double[] {5, 1, 9, 2, Double.NaN, 3, 7, 8}, (byte) 0, (byte) 0, (byte) 1), 4);
        assertThat(groups.counts()).containsExactly(3, 3);
        assertThat(groups.mins()).containsExactly(1, 3);
        assertThat(groups.maxs()).containsExactly(5, 8);
        assertThat(groups.firsts()).containsExactly(5, 3);
        assertThat(groups.lasts()).containsExactly(2, 8);
        assertThat(groups.means()).containsExactly(8 / 3.0, 6);
        assertThat(groups.lows()).containsExactly(0, 40);
        assertThat(groups.highs()).containsExactly(30, 70);
        Groups all = groups.merged(8);
        assertThat(all.counts()).containsExactly(6);
        assertThat(all.means()[0]).isCloseTo(26 / 6.0, within(1e-15));
        assertThat(all.firsts()[0]).isEqualTo(5);
        assertThat(all.lasts()[0]).isEqualTo(8);
        assertThat(all.lows()[0]).isZero();
        assertThat(all.highs()[0]).isEqualTo(70);
    }

    @Test
    void aGroupWithoutAMeasurementIsEmpty() {
        Groups groups = Groups.of(block(0, new double[] {Double.NaN, Double.NaN, 4}), 2);
        assertThat(groups.counts()).containsExactly(0, 1);
        assertThat(groups.mins()).containsExactly(Double.NaN, 4);
        assertThat(groups.means()).containsExactly(Double.NaN, 4);
        assertThat(groups.merged(2).mins()).containsExactly(4);
        assertSame(read(groups, 0), groups);
        Groups none = Groups.of(block(0, new double[] {Double.NaN}), 2);
        assertSame(read(none, 0), none);
    }

    private static Groups read(Groups groups, int channel) {
        return PackedGroups.of(PackedGroups.pack(List.of(groups))).read(channel).orElseThrow();
    }

    @Test
    void anyStatisticsComeBackBitForBitButTheMean() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        for (int trial = 0; trial < 2000; trial++) {
            Groups groups = Groups.of(Blocks.random(random, 0, 3, 1 + random.nextInt(400)), 1 + random.nextInt(50));
            assertSame(read(groups, 3), groups);
            Groups merged = groups.merged(1 + random.nextInt(8));
            assertSame(read(merged, 3), merged);
        }
    }

    @Test
    void levelsOfStatisticsSayTheSameAsTheSamples() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        for (int trial = 0; trial < 300; trial++) {
            double[] values = new double[1 + random.nextInt(2000)];
            Arrays.setAll(values, i -> Math.rint(random.nextGaussian() * 50) / 100);
            SampleBlock block = block(0, values);
            Groups direct = Groups.of(block, 64);
            Groups stepped = read(read(Groups.of(block, 8), 0).merged(4), 0).merged(2);
            assertSame(stepped, direct);
        }
    }

    @Test
    void partsAreJoinedInTheirOrder() {
        Groups first = Groups.of(block(1, new double[] {1, 2, 3}), 2);
        Groups second = Groups.of(block(1, new double[] {4, 5}), 2);
        Groups joined = Groups.joined(List.of(first, second));
        assertThat(joined.mins()).containsExactly(1, 3, 4);
        assertThat(joined.channel()).isEqualTo(1);
        assertThat(joined.size()).isEqualTo(3);
    }

    @Test
    void aChannelThatIsNotThereIsEmptyAndAllAreAll() {
        Groups one = Groups.of(block(1, new double[] {1, 2, 3}), 2);
        Groups two = Groups.of(block(2, new double[] {1, 2, 3, 4, 5}), 2);
        PackedGroups packed = PackedGroups.of(PackedGroups.pack(List.of(one, two)));
        assertThat(packed.read(3)).isEmpty();
        assertThat(packed.all()).hasSize(2);
        assertSame(packed.all().get(1), two);
    }

    @Test
    void damageIsFound() {
        byte[] whole = PackedGroups.pack(List.of(Groups.of(block(1, new double[] {1.5, 2, 3}), 2)));
        for (int at = 0; at < whole.length; at++) {
            byte[] damaged = whole.clone();
            damaged[at] ^= 0x40;
            assertThatThrownBy(() -> PackedGroups.of(damaged).all()).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void statisticsAreEquallyMany() {
        assertThatThrownBy(() -> new Groups(
                        0,
                        0,
                        new long[1],
                        new long[2],
                        new long[1],
                        new double[1],
                        new double[1],
                        new double[1],
                        new double[1],
                        new double[1]))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
