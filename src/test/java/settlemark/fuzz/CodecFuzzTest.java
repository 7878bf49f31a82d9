package settlemark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.codec.Groups;
import settlemark.codec.PackedGroups;
import settlemark.codec.PackedRows;
import settlemark.codec.PackedSamples;
import settlemark.codec.SignedColumns;
import settlemark.session.SampleBlock;

/**
 * Any bytes, taken as samples, come back bit for bit; taken as a block, they are one or are refused, also where their
 * digests are right.
 */
final class CodecFuzzTest {
    static Stream<Arguments> blocks() {
        Random random = new Random(42);
        return Stream.of(0, 1, 9, 40, 300, 3000).map(length -> {
            byte[] bytes = new byte[length];
            random.nextBytes(bytes);
            return Arguments.of((Object) bytes);
        });
    }

    @MethodSource("blocks")
    @FuzzTest(maxDuration = "10m")
    void anySamplesComeBackAndAnyBytesAreABlockOrRefused(byte[] bytes) {
        comesBack(samples(bytes));
        refusedOrRead(bytes);
        if (bytes.length > 3) {
            int rows = 1 + (bytes[0] & 0xff) + (bytes[1] & 3) * 256;
            int cut = 3 + Math.min(bytes.length - 3, bytes[2] & 0xff);
            byte[] shared = Arrays.copyOfRange(bytes, 3, cut);
            byte[] column = Arrays.copyOfRange(bytes, cut, bytes.length);
            refusedOrRead(SignedColumns.of(rows, shared, column));
        }
    }

    private static SampleBlock samples(byte[] bytes) {
        int count = bytes.length / 17;
        ByteBuffer in = ByteBuffer.wrap(bytes);
        SampleBlock block = new SampleBlock(1, 2, new long[count], new double[count], new byte[count]);
        for (int i = 0; i < count; i++) {
            block.timesNanos()[i] = in.getLong();
            block.values()[i] = Double.longBitsToDouble(in.getLong());
            block.statuses()[i] = (byte) ((in.get() & 0xff) % 6);
        }
        return block;
    }

    private static void comesBack(SampleBlock block) {
        comesBack(block, PackedSamples.of(PackedSamples.packQuickly(List.of(block))));
        comesBack(block, PackedSamples.of(PackedSamples.pack(List.of(block))));
    }

    private static void comesBack(SampleBlock block, PackedSamples packed) {
        for (PackedSamples.Part part : packed.parts()) {
            SampleBlock back = packed.read(part);
            assertThat(back.timesNanos()).isEqualTo(block.timesNanos());
            assertThat(back.statuses()).isEqualTo(block.statuses());
            assertThat(bits(back)).isEqualTo(bits(block));
            Groups groups = Groups.of(block, 7);
            Groups read = PackedGroups.of(PackedGroups.pack(List.of(groups)))
                    .read(block.channel())
                    .orElseThrow();
            assertThat(read.counts()).isEqualTo(groups.counts());
            assertThat(read.mins()).isEqualTo(groups.mins());
            assertThat(read.lasts()).isEqualTo(groups.lasts());
        }
    }

    private static long[] bits(SampleBlock block) {
        return Arrays.stream(block.values())
                .mapToLong(Double::doubleToRawLongBits)
                .toArray();
    }

    private static void refusedOrRead(byte[] bytes) {
        try {
            PackedSamples packed = PackedSamples.of(bytes);
            for (PackedSamples.Part part : packed.parts()) {
                comesBack(packed.read(part));
            }
        } catch (IllegalArgumentException e) {
            assertThat(e).hasMessageMatching("(?s).{10,200}");
        }
        try {
            assertThat(PackedGroups.of(bytes).all()).allMatch(g -> g.size() > 0);
        } catch (IllegalArgumentException e) {
            assertThat(e).hasMessageMatching("(?s).{10,200}");
        }
        try {
            assertThat(PackedRows.unpack(bytes)).doesNotContainNull();
        } catch (IllegalArgumentException e) {
            assertThat(e).hasMessageMatching("(?s).{10,200}");
        }
    }
}
