package settlemark.ui;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import settlemark.measure.Chunk;
import settlemark.profile.SerialLine;

/** Gives made-up frames and keeps what is saved. */
final class FakeWorkshop implements WorkshopHost {
    /** An invented frame: start A5 0E, a counter, a blank, two signed numbers of four bytes, a CRC-16/MODBUS. */
    static List<Chunk> made() {
        List<Chunk> chunks = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            byte[] frame = new byte[14];
            frame[0] = (byte) 0xA5;
            frame[1] = 0x0E;
            frame[2] = (byte) (0x60 + i);
            put(frame, 4, 16_900 + i);
            put(frame, 8, 8_690 - 3 * i);
            int crc = modbus(frame, 12);
            frame[12] = (byte) crc;
            frame[13] = (byte) (crc >> 8);
            chunks.add(new Chunk(i * 250_000_000L, 0, frame));
        }
        return chunks;
    }

    private static void put(byte[] frame, int at, int value) {
        for (int k = 0; k < 4; k++) {
            frame[at + k] = (byte) (value >> (24 - 8 * k));
        }
    }

    /** Bit by bit, as the MODBUS over serial line specification and implementation guide V1.02, 6.2.2, describes it. */
    static int modbus(byte[] bytes, int length) {
        int crc = 0xFFFF;
        for (int i = 0; i < length; i++) {
            crc ^= bytes[i] & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 1) != 0 ? crc >> 1 ^ 0xA001 : crc >> 1;
            }
        }
        return crc;
    }

    final List<String> saved = new ArrayList<>();

    @Override
    public void frames(Path file, Consumer<List<Chunk>> done, Consumer<String> failed) {
        if (file.toString().equals("frames.hex")) {
            done.accept(made());
        } else {
            failed.accept(file + ": no such file");
        }
    }

    @Override
    public void listen(String port, SerialLine line, Consumer<Chunk> heard, Consumer<String> failed) {
        made().forEach(heard);
    }

    @Override
    public void stop() {
        // Nothing goes on.
    }

    @Override
    public void save(String id, String text, Consumer<Path> done, Consumer<String> failed) {
        saved.add(text);
        done.accept(Path.of(id + ".yaml"));
    }
}
