package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

final class FrameBufferTest {
    /** Bytes that each say their stream offset, as far as a byte can. */
    private static byte[] run(int from, int count) {
        byte[] bytes = new byte[count];
        for (int i = 0; i < count; i++) {
            bytes[i] = (byte) (from + i);
        }
        return bytes;
    }

    private static void holdsItsOffsets(FrameBuffer buffer) {
        for (int i = buffer.from; i < buffer.to; i++) {
            assertThat(buffer.bytes[i]).as("index %d", i).isEqualTo((byte) buffer.offset(i));
        }
    }

    @Test
    void everyByteHasTheTimeOfItsChunk() {
        FrameBuffer buffer = new FrameBuffer(10);
        buffer.append(run(0, 2), 0, 100);
        buffer.append(run(2, 3), 0, 200);
        buffer.append(run(5, 1), 0, 200);
        buffer.append(run(6, 1), 0, 300);
        assertThat(new long[] {
                    buffer.timeNanos(0),
                    buffer.timeNanos(1),
                    buffer.timeNanos(2),
                    buffer.timeNanos(4),
                    buffer.timeNanos(5),
                    buffer.timeNanos(6)
                })
                .containsExactly(100, 100, 200, 200, 200, 300);
        assertThatThrownBy(() -> buffer.timeNanos(7)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void timesOfManySmallChunksAreKept() {
        FrameBuffer buffer = new FrameBuffer(100);
        for (int i = 0; i < 100; i++) {
            buffer.append(run(i, 1), 0, 10L * i);
        }
        for (int i = 0; i < 100; i++) {
            assertThat(buffer.timeNanos(i)).isEqualTo(10L * i);
        }
    }

    @Test
    void timesStayRightWhileBytesAreDecided() {
        FrameBuffer buffer = new FrameBuffer(100);
        for (int i = 0; i < 1000; i++) {
            buffer.append(run(i, 1), 0, 10L * i);
            if (i % 3 == 2) {
                buffer.from = buffer.to - i % 2 - 1;
            }
            for (int at = buffer.from; at < buffer.to; at++) {
                assertThat(buffer.timeNanos(at)).isEqualTo(10 * buffer.offset(at));
            }
            holdsItsOffsets(buffer);
        }
    }

    @Test
    void whereTheEndIsReachedTheUndecidedBytesMoveToTheFront() {
        FrameBuffer buffer = new FrameBuffer(10);
        int capacity = buffer.bytes.length;
        assertThat(buffer.append(run(0, capacity - 10), 0, 100)).isEqualTo(capacity - 10);
        buffer.from = capacity - 12;
        assertThat(buffer.append(run(capacity - 10, 20), 0, 200)).isEqualTo(20);
        assertThat(buffer.length()).isEqualTo(22);
        assertThat(buffer.from).isZero();
        assertThat(buffer.offset(buffer.from)).isEqualTo(capacity - 12);
        assertThat(buffer.timeNanos(1)).isEqualTo(100);
        assertThat(buffer.timeNanos(2)).isEqualTo(200);
        holdsItsOffsets(buffer);
    }

    @Test
    void noMoreIsTakenThanThereIsRoomFor() {
        FrameBuffer buffer = new FrameBuffer(10);
        int capacity = buffer.bytes.length;
        byte[] much = run(0, capacity + 100);
        assertThat(buffer.append(much, 0, 1)).isEqualTo(capacity);
        buffer.from = 60;
        assertThat(buffer.append(much, capacity, 2)).isEqualTo(60);
        holdsItsOffsets(buffer);
        buffer.from = buffer.to;
        assertThat(buffer.append(much, capacity + 60, 3)).isEqualTo(40);
        assertThat(buffer.offset(buffer.from)).isEqualTo(capacity + 60);
        assertThat(buffer.timeNanos(buffer.from)).isEqualTo(3);
        holdsItsOffsets(buffer);
    }

    @Test
    void twoOfTheLongestFramesFit() {
        FrameBuffer buffer = new FrameBuffer(3000);
        assertThat(buffer.append(run(0, 6000), 0, 1)).isEqualTo(6000);
        assertThat(new FrameBuffer(1).append(run(0, 6000), 0, 1)).isEqualTo(4096);
    }

    @Test
    void aClearedStreamGoesOnCounting() {
        FrameBuffer buffer = new FrameBuffer(10);
        buffer.append(run(0, 7), 0, 100);
        buffer.from = 3;
        buffer.clear();
        buffer.append(run(7, 2), 0, 200);
        assertThat(buffer.length()).isEqualTo(2);
        assertThat(buffer.offset(buffer.from)).isEqualTo(7);
        assertThat(buffer.timeNanos(buffer.from)).isEqualTo(200);
    }
}
