package settlemark.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.session.SampleBlock;

final class PackedSamplesTest {
    private static Random random() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        return new Random(seed);
    }

    private static void assertSame(SampleBlock back, SampleBlock block) {
        assertThat(back.probe()).isEqualTo(block.probe());
        assertThat(back.channel()).isEqualTo(block.channel());
        assertThat(back.timesNanos()).isEqualTo(block.timesNanos());
        assertThat(back.statuses()).isEqualTo(block.statuses());
        assertThat(Blocks.bits(back.values())).isEqualTo(Blocks.bits(block.values()));
    }

    private static byte[] pack(List<SampleBlock> blocks, boolean quickly) {
        return quickly ? PackedSamples.packQuickly(blocks) : PackedSamples.pack(blocks);
    }

    @Test
    void whatIsPackedQuicklyIsLittleLonger() {
        Random random = new Random(2);
        long[] times = new long[1000];
        double[] values = new double[times.length];
        Arrays.setAll(times, i -> i * 100_000_000L + random.nextInt(10_000));
        Arrays.setAll(values, i -> Math.rint(100 * Math.sin(i * 0.01) + 2 * random.nextGaussian()) / 100);
        List<SampleBlock> block = List.of(new SampleBlock(0, 0, times, values, new byte[times.length]));
        int well = PackedSamples.pack(block).length;
        assertThat(PackedSamples.packQuickly(block).length).isBetween(well, well * 6 / 5);
    }

    @Test
    void anyBlocksComeBackBitForBit() {
        Random random = random();
        for (int trial = 0; trial < 3000; trial++) {
            List<SampleBlock> blocks = new ArrayList<>();
            for (int channel = random.nextInt(3); channel >= 0; channel--) {
                blocks.add(Blocks.random(random, random.nextInt(2), channel, 1 + random.nextInt(300)));
            }
            PackedSamples packed = PackedSamples.of(pack(blocks, random.nextBoolean()));
            assertThat(packed.parts()).hasSize(blocks.size());
            for (int i = 0; i < blocks.size(); i++) {
                SampleBlock block = blocks.get(i);
                PackedSamples.Part part = packed.parts().stream()
                        .filter(p -> p.channel() == block.channel())
                        .findFirst()
                        .orElseThrow();
                assertSame(packed.read(part), block);
                assertThat(part.lowNanos())
                        .isEqualTo(Arrays.stream(block.timesNanos()).min().orElseThrow());
                assertThat(part.highNanos())
                        .isEqualTo(Arrays.stream(block.timesNanos()).max().orElseThrow());
            }
        }
    }

    @Test
    void someOfAPartAreReadWithoutTheOthers() {
        Random random = random();
        for (int trial = 0; trial < 500; trial++) {
            SampleBlock block = Blocks.random(random, 0, 1, 1 + random.nextInt(1000));
            PackedSamples packed = PackedSamples.of(pack(List.of(block), random.nextBoolean()));
            int from = random.nextInt(block.size() + 1);
            int to = from + random.nextInt(block.size() + 1 - from);
            SampleBlock some = packed.read(packed.parts().get(0), from, to);
            assertSame(
                    some,
                    new SampleBlock(
                            0,
                            1,
                            Arrays.copyOfRange(block.timesNanos(), from, to),
                            Arrays.copyOfRange(block.values(), from, to),
                            Arrays.copyOfRange(block.statuses(), from, to)));
        }
    }

    @Test
    void aStretchOfTimeIsReadFromItsFirstToItsLastSample() {
        long[] times = {10, 20, 15, 30, 40, 50};
        SampleBlock block = new SampleBlock(0, 0, times, new double[] {1, 2, 3, 4, 5, 6}, new byte[6]);
        PackedSamples packed = PackedSamples.of(PackedSamples.pack(List.of(block)));
        PackedSamples.Part part = packed.parts().get(0);
        assertThat(packed.between(part, 12, 30).values()).containsExactly(2, 3, 4);
        assertThat(packed.between(part, 15, 15).values()).containsExactly(3);
        assertThat(packed.between(part, 31, 39).size()).isZero();
        assertThat(packed.between(part, 10, 50).size()).isEqualTo(6);
        assertThat(packed.between(part, Long.MIN_VALUE, 9).size()).isZero();
    }

    @Test
    void channelsThatArriveTogetherShareTheirTimes() {
        Random random = new Random(1);
        long[] times = new long[4096];
        Arrays.setAll(times, i -> i * 100_000_000L + random.nextInt(10_000));
        List<SampleBlock> blocks = new ArrayList<>();
        for (int channel = 0; channel < 8; channel++) {
            double[] values = new double[times.length];
            Arrays.fill(values, channel + 0.5);
            blocks.add(new SampleBlock(0, channel, times, values, new byte[times.length]));
        }
        byte[] one = PackedSamples.pack(blocks.subList(0, 1));
        byte[] eight = PackedSamples.pack(blocks);
        // 14 bits of jitter a time, and next to nothing for a value that stays
        assertThat(one.length / 4096.0).isBetween(1.6, 2.0);
        assertThat(eight.length - one.length).isBetween(7, 7 * 150);
        assertThat(PackedSamples.pack(List.of(blocks.get(0), other(blocks.get(1)))).length)
                .as("another probe's times are its own")
                .isGreaterThan(2 * one.length - 150);
    }

    private static SampleBlock other(SampleBlock block) {
        return new SampleBlock(9, block.channel(), block.timesNanos(), block.values(), block.statuses());
    }

    /** Bytes a value, times shared: what each kind of gauge costs. */
    @ParameterizedTest
    @CsvSource({"0.001, 0.6", "0.01, 0.6", "1, 0.6", "0.25, 0.6", "0.0009765625, 0.6"})
    void valuesOnAGridTakeFewBits(double step, double most) {
        Random random = new Random(7);
        IntToDoubleFunction gauge = i -> (Math.rint(random.nextGaussian() * 3) + 3500) / (1 / step);
        assertThat(bytesPerValue(gauge)).isBetween(0.3, most);
    }

    @Test
    void valuesOffAnyGridTakeAboutTheirBits() {
        Random random = new Random(7);
        assertThat(bytesPerValue(i -> (float) random.nextGaussian())).isBetween(3.0, 4.3);
        assertThat(bytesPerValue(i -> random.nextGaussian())).isBetween(6.0, 8.3);
        assertThat(bytesPerValue(i -> Double.longBitsToDouble(random.nextLong())))
                .isBetween(8.0, 8.2);
    }

    @Test
    void aFewValuesOffTheGridDoNotSpoilIt() {
        Random random = new Random(7);
        double plain = bytesPerValue(i -> (Math.rint(random.nextGaussian() * 3) + 9) / 1000);
        double odd = bytesPerValue(i -> i % 500 == 0 ? Double.NaN : (Math.rint(random.nextGaussian() * 3) + 9) / 1000);
        double gone = bytesPerValue(i -> i > 2000 ? Double.NaN : (Math.rint(random.nextGaussian() * 3) + 9) / 1000);
        assertThat(odd).isBetween(plain, plain + 0.05);
        assertThat(gone).as("a gauge that is gone costs nothing").isLessThan(plain);
    }

    private static double bytesPerValue(IntToDoubleFunction gauge) {
        long[] times = new long[4096];
        Arrays.setAll(times, i -> i * 1000L);
        double[] values = new double[times.length];
        Arrays.setAll(values, gauge::applyAsDouble);
        SampleBlock block = new SampleBlock(0, 0, times, values, new byte[times.length]);
        byte[] packed = PackedSamples.pack(List.of(block));
        PackedSamples back = PackedSamples.of(packed);
        assertSame(back.read(back.parts().get(0)), block);
        return packed.length / 4096.0;
    }

    @Test
    void moreSamplesThanATableMayHaveAreCutInPieces() {
        int count = ColumnSet.MOST_ROWS + 5;
        long[] times = new long[count];
        Arrays.setAll(times, i -> i);
        PackedSamples packed = PackedSamples.of(
                PackedSamples.pack(List.of(new SampleBlock(2, 3, times, new double[count], new byte[count]))));
        assertThat(packed.parts()).extracting(PackedSamples.Part::samples).containsExactly(ColumnSet.MOST_ROWS, 5);
        assertThat(packed.read(packed.parts().get(1)).timesNanos()[4]).isEqualTo(count - 1L);
    }

    @Test
    void emptyBlocksAreLeftOut() {
        SampleBlock none = new SampleBlock(0, 0, new long[0], new double[0], new byte[0]);
        assertThat(PackedSamples.of(PackedSamples.pack(List.of(none))).parts()).isEmpty();
    }

    /** A stored form may not change without a new format. */
    @Test
    void theFormStays() {
        SampleBlock block = new SampleBlock(
                1, 2, new long[] {1000, 2001, 3000}, new double[] {3.51, 3.52, 3.49}, new byte[] {0, 0, 5});
        byte[] packed = PackedSamples.pack(List.of(block));
        assertThat(HexFormat.of().formatHex(packed)).isEqualTo(FORM);
        PackedSamples back = PackedSamples.of(HexFormat.of().parseHex(FORM));
        assertSame(back.read(back.parts().get(0)), block);
    }

    private static final String FORM =
            "10000000010103d00fd00f070101020aacd4bd6f" + "d00fd00f001230594e35b701" + "040a021000df0215e0bd1a10ba";

    @Test
    void anyDamageIsFoundAndCostsOnlyTheChannelThatItIsIn() {
        Random random = random();
        long[] times = Blocks.times(random, 200);
        List<SampleBlock> blocks = new ArrayList<>();
        for (int channel = 0; channel < 4; channel++) {
            blocks.add(new SampleBlock(0, channel, times, Blocks.values(random, 200), Blocks.statuses(random, 200)));
        }
        byte[] whole = PackedSamples.pack(blocks);
        int oneLost = 0;
        for (int at = 0; at < whole.length; at++) {
            byte[] damaged = whole.clone();
            damaged[at] ^= (byte) (1 + random.nextInt(255));
            int lost = lost(damaged, blocks);
            assertThat(lost).as("byte " + at).isIn(1, 4);
            oneLost += lost == 1 ? 1 : 0;
        }
        assertThat(oneLost).isGreaterThan(whole.length / 3);
    }

    /** How many channels are refused; what is not is as it was. */
    private static int lost(byte[] damaged, List<SampleBlock> blocks) {
        PackedSamples packed;
        try {
            packed = PackedSamples.of(damaged);
        } catch (IllegalArgumentException e) {
            return blocks.size();
        }
        int lost = 0;
        for (PackedSamples.Part part : packed.parts()) {
            try {
                assertSame(packed.read(part), blocks.get(part.channel()));
            } catch (IllegalArgumentException e) {
                assertThat(e).hasMessageContaining("digest");
                lost++;
            }
        }
        return lost;
    }

    @Test
    void aBlockThatIsCutOffAnywhereIsRefused() {
        byte[] whole = PackedSamples.pack(List.of(Blocks.random(new Random(3), 0, 0, 50)));
        for (int length = 0; length < whole.length; length++) {
            byte[] cut = Arrays.copyOf(whole, length);
            assertThatThrownBy(() -> PackedSamples.of(cut)).isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> PackedSamples.of(Arrays.copyOf(whole, whole.length + 1)))
                .hasMessageContaining("not as long");
    }
}
