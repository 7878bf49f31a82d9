package settlemark.link;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiFunction;

/** A Modbus device that answers as a test says; takes requests of eight bytes. */
final class ScriptedSlave implements AutoCloseable {
    /**
     * An answer.
     *
     * @param afterMillis how late
     * @param bytes as they travel, none for no answer
     */
    record Answer(long afterMillis, byte[] bytes) {}

    private final InputStream in;
    private final OutputStream out;
    private int asked;

    ScriptedSlave(String path, BiFunction<Integer, byte[], Answer> script) throws IOException {
        String node = Path.of(path).toRealPath().toString();
        in = new FileInputStream(node);
        out = new FileOutputStream(node);
        Fixtures.THREADS.newThread(() -> run(script)).start();
    }

    private void run(BiFunction<Integer, byte[], Answer> script) {
        try {
            byte[] request = request();
            while (request.length == 8) {
                Answer answer = script.apply(asked++, request);
                LockSupport.parkNanos(answer.afterMillis() * 1_000_000);
                out.write(answer.bytes());
                out.flush();
                request = request();
            }
        } catch (IOException e) {
            return;
        }
    }

    /** Byte by byte: a device has no length to ask for. */
    private byte[] request() throws IOException {
        byte[] request = new byte[8];
        for (int i = 0; i < request.length; i++) {
            int next = in.read();
            if (next < 0) {
                return new byte[0];
            }
            request[i] = (byte) next;
        }
        return request;
    }

    /** Registers that are their own address, as many as said. */
    static byte[] registers(byte[] request, int count) {
        byte[] frame = new byte[3 + 2 * count];
        frame[0] = request[0];
        frame[1] = request[1];
        frame[2] = (byte) (2 * count);
        for (int i = 0; i < count; i++) {
            int value = ((request[2] & 0xFF) << 8 | request[3] & 0xFF) + i;
            frame[3 + 2 * i] = (byte) (value >> 8);
            frame[4 + 2 * i] = (byte) value;
        }
        return sealed(frame);
    }

    /** With CRC-16/MODBUS, worked out bit by bit as Modbus over Serial Line 1.02, appendix B, describes it. */
    static byte[] sealed(byte... body) {
        int crc = 0xFFFF;
        for (byte b : body) {
            crc ^= b & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 1) == 0 ? crc >> 1 : crc >> 1 ^ 0xA001;
            }
        }
        byte[] frame = Arrays.copyOf(body, body.length + 2);
        frame[body.length] = (byte) crc;
        frame[body.length + 1] = (byte) (crc >> 8);
        return frame;
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
