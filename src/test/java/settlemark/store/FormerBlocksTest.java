package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.measure.SampleStatus;
import settlemark.session.SampleBlock;

final class FormerBlocksTest {
    /** As the program of formats 1 and 2 wrote them. */
    private static byte[] pack(SampleBlock block) {
        long[] times = block.timesNanos();
        boolean wide = wideSteps(times);
        boolean statuses = anyStatus(block.statuses());
        int count = times.length;
        ByteBuffer out = ByteBuffer.allocate(13 + (count - 1) * (wide ? 8 : 4) + count * (statuses ? 9 : 8))
                .order(ByteOrder.LITTLE_ENDIAN);
        out.put((byte) ((wide ? 1 : 0) | (statuses ? 2 : 0)));
        out.putInt(count).putLong(times[0]);
        for (int i = 1; i < count; i++) {
            long step = times[i] - times[i - 1];
            if (wide) {
                out.putLong(step);
            } else {
                out.putInt((int) step);
            }
        }
        for (double value : block.values()) {
            out.putLong(Double.doubleToRawLongBits(value));
        }
        if (statuses) {
            out.put(block.statuses());
        }
        return out.array();
    }

    private static boolean wideSteps(long[] times) {
        for (int i = 1; i < times.length; i++) {
            long step = times[i] - times[i - 1];
            if (step != (int) step) {
                return true;
            }
        }
        return false;
    }

    private static boolean anyStatus(byte[] statuses) {
        for (byte status : statuses) {
            if (status != 0) {
                return true;
            }
        }
        return false;
    }

    @Test
    void anyBlockComesBackBitForBit() {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        for (int trial = 0; trial < 2000; trial++) {
            int count = 1 + random.nextInt(40);
            int shift = random.nextInt(64);
            boolean plain = random.nextBoolean();
            long[] times = new long[count];
            double[] values = new double[count];
            byte[] statuses = new byte[count];
            for (int i = 0; i < count; i++) {
                times[i] = random.nextLong() >> shift;
                values[i] = Double.longBitsToDouble(random.nextLong());
                statuses[i] = (byte) (plain ? 0 : random.nextInt(SampleStatus.values().length));
            }
            SampleBlock back = FormerBlocks.unpack(3, 5, pack(new SampleBlock(3, 5, times, values, statuses)));
            assertThat(back.probe()).isEqualTo(3);
            assertThat(back.channel()).isEqualTo(5);
            assertThat(back.timesNanos()).isEqualTo(times);
            assertThat(back.statuses()).isEqualTo(statuses);
            assertThat(bits(back.values())).isEqualTo(bits(values));
        }
    }

    /** Written out by hand from the layout in the class comment: it may not change without a new format. */
    @Test
    void theLayoutStays() {
        SampleBlock block = new SampleBlock(
                0, 0, new long[] {1, 258}, new double[] {1.0, -2.0}, new byte[] {0, (byte) SampleStatus.FAULT.ordinal()
                });
        assertThat(HexFormat.of().formatHex(pack(block)))
                .isEqualTo("02" + "02000000" + "0100000000000000" + "01010000" + "000000000000f03f" + "00000000000000c0"
                        + "0005");
        assertThat(SampleStatus.values())
                .containsExactly(
                        SampleStatus.OK,
                        SampleStatus.OVER_RANGE,
                        SampleStatus.UNDER_RANGE,
                        SampleStatus.OPEN_CIRCUIT,
                        SampleStatus.NOT_READY,
                        SampleStatus.FAULT);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "00",
                "000000000000000000000000",
                "00000000000000000000000000",
                "00ffffffff0000000000000000",
                "00ffffff7f0000000000000000",
                "0001000000000000000000000000000000000000",
                "04010000000000000000000000000000000000f03f",
                "020100000000000000000000000000000000f03f06",
                "02010000000000000000000000000000000000f03fff"
            })
    void bytesThatAreNoBlockAreRefused(String hex) {
        byte[] bytes = HexFormat.of().parseHex(hex);
        assertThatThrownBy(() -> FormerBlocks.unpack(0, 0, bytes)).isInstanceOf(IllegalArgumentException.class);
    }

    private static long[] bits(double[] values) {
        return Arrays.stream(values).mapToLong(Double::doubleToRawLongBits).toArray();
    }
}
