package settlemark.benchmark;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import settlemark.decode.DecodeSink;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;

/**
 * The eight-channel frame decoded as somebody would write it for this one frame: a byte buffer, a table for the CRC, a
 * loop over the inputs. It is as careful as the decoder that it is measured against: it takes chunks that end anywhere,
 * finds the next good frame after any damage, reports what it passed over with its offset, and counts missed frames.
 */
final class HandWritten {
    private static final short START = (short) 0x5AA5; // low byte first
    private static final int LENGTH = 17;
    private static final int FRAME_BYTES = 22;
    private static final int COVERED_FROM = 2;
    private static final int COUNTER_AT = 3;
    private static final int INPUTS_AT = 4;
    private static final int CRC_AT = 20;
    private static final double SCALE = 0.01;
    private static final int[] CRC_TABLE = crcTable();

    private final ByteBuffer buffer = ByteBuffer.allocate(1024).order(ByteOrder.LITTLE_ENDIAN);
    private long offset;
    private int strayBytes;
    private int nextCounter = -1;
    private long missedFrames;

    /** Takes the next bytes of the stream. */
    void accept(Chunk chunk, DecodeSink sink) {
        byte[] bytes = chunk.bytes();
        int from = 0;
        while (from < bytes.length) {
            int count = Math.min(bytes.length - from, buffer.remaining());
            buffer.put(bytes, from, count);
            from += count;
            buffer.flip();
            while (buffer.remaining() >= FRAME_BYTES) {
                step(chunk.timeNanos(), sink);
            }
            buffer.compact();
        }
    }

    long missedFrames() {
        return missedFrames;
    }

    private void step(long timeNanos, DecodeSink sink) {
        int at = buffer.position();
        if (buffer.getShort(at) != START || buffer.get(at + COVERED_FROM) != LENGTH) {
            strayBytes++;
            pass(1);
            return;
        }
        if (strayBytes > 0) {
            sink.rejected(new Rejected(timeNanos, offset - strayBytes, strayBytes + " stray bytes"));
            strayBytes = 0;
        }
        if (crc(at + COVERED_FROM, at + CRC_AT) != (buffer.getShort(at + CRC_AT) & 0xFFFF)) {
            sink.rejected(new Rejected(timeNanos, offset, "checksum"));
            pass(1);
            return;
        }
        count(buffer.get(at + COUNTER_AT) & 0xFF);
        for (int i = 0; i < Streams.CHANNELS; i++) {
            sink.sample(i, timeNanos, buffer.getShort(at + INPUTS_AT + 2 * i) * SCALE, SampleStatus.OK);
        }
        pass(FRAME_BYTES);
    }

    private void count(int counter) {
        if (nextCounter >= 0) {
            missedFrames += counter - nextCounter & 0xFF;
        }
        nextCounter = counter + 1 & 0xFF;
    }

    private void pass(int bytes) {
        buffer.position(buffer.position() + bytes);
        offset += bytes;
    }

    private int crc(int from, int to) {
        int crc = 0xFFFF;
        for (int i = from; i < to; i++) {
            crc = crc << 8 & 0xFFFF ^ CRC_TABLE[(crc >>> 8 ^ buffer.get(i)) & 0xFF];
        }
        return crc;
    }

    /** CRC-16/IBM-3740: polynomial 0x1021, high bit first. */
    private static int[] crcTable() {
        int[] table = new int[256];
        for (int i = 0; i < table.length; i++) {
            int crc = i << 8;
            for (int bit = 0; bit < Byte.SIZE; bit++) {
                crc = (crc & 0x8000) != 0 ? crc << 1 ^ 0x1021 : crc << 1;
            }
            table[i] = crc & 0xFFFF;
        }
        return table;
    }
}
