package settlemark.codec;

import java.util.Arrays;
import java.util.Random;
import settlemark.measure.SampleStatus;
import settlemark.session.SampleBlock;

/** Random blocks of every kind that a probe, or a broken one, can give. */
final class Blocks {
    static final double[] ODD = {
        0.0,
        -0.0,
        Double.NaN,
        Double.longBitsToDouble(0x7ff8_0000_0000_1234L),
        Double.longBitsToDouble(0x7ff0_0000_0000_0001L),
        Double.longBitsToDouble(0xfff0_0000_0000_0001L),
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        Double.MIN_VALUE,
        -Double.MIN_VALUE,
        Double.MIN_NORMAL,
        Math.nextDown(Double.MIN_NORMAL),
        Double.MAX_VALUE,
        -Double.MAX_VALUE,
        0.1 + 0.2,
        1e15 + 0.3,
        9007199254740993.0,
        Float.MIN_VALUE,
        1 / 3.0,
        (float) (1 / 3.0)
    };

    private Blocks() {}

    static SampleBlock random(Random random, int probe, int channel, int count) {
        return new SampleBlock(probe, channel, times(random, count), values(random, count), statuses(random, count));
    }

    static long[] times(Random random, int count) {
        long[] times = new long[count];
        int kind = random.nextInt(4);
        int shift = random.nextInt(64);
        long time = 0;
        for (int i = 0; i < count; i++) {
            time += 100_000_000L + random.nextInt(9000);
            times[i] = switch (kind) {
                case 0 -> time;
                case 1 -> random.nextLong() >> shift;
                case 2 -> 7;
                default -> i * 1_000_000_000L;
            };
        }
        return times;
    }

    static double[] values(Random random, int count) {
        double[] values = new double[count];
        int kind = random.nextInt(8);
        double scale = Math.pow(10, random.nextInt(6));
        for (int i = 0; i < count; i++) {
            double noise = random.nextGaussian();
            values[i] = switch (kind) {
                case 0 -> Math.rint(noise * 20 + 3.5 * scale) / scale;
                case 1 -> (float) noise;
                case 2 -> noise;
                case 3 -> Double.longBitsToDouble(random.nextLong());
                case 4 -> ODD[random.nextInt(ODD.length)];
                case 5 -> random.nextInt(40) == 0 ? Double.NaN : Math.rint(noise * scale) / scale;
                case 6 -> Math.rint(noise * 4096) / 1024;
                default -> 42.5;
            };
        }
        return values;
    }

    static byte[] statuses(Random random, int count) {
        byte[] statuses = new byte[count];
        if (random.nextBoolean()) {
            for (int i = 0; i < count; i++) {
                int last = i == 0 ? 0 : statuses[i - 1];
                statuses[i] = (byte) (random.nextInt(9) == 0 ? random.nextInt(SampleStatus.values().length) : last);
            }
        }
        return statuses;
    }

    static long[] bits(double[] values) {
        return Arrays.stream(values).mapToLong(Double::doubleToRawLongBits).toArray();
    }
}
