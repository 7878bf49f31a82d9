package settlemark.profile;

import java.util.Locale;

/** Settings of the serial line. The schema leaves nothing that could be wrong. */
final class SerialLineReader {
    private SerialLineReader() {}

    static SerialLine read(Section serial, String usualParity) {
        return new SerialLine(
                serial.integer("baud", 0),
                serial.integer("data-bits", 8),
                SerialLine.Parity.valueOf(serial.text("parity", usualParity).toUpperCase(Locale.ROOT)),
                stopBits(serial.number("stop-bits", 1)),
                SerialLine.Flow.valueOf(serial.text("flow", "none").toUpperCase(Locale.ROOT)));
    }

    private static SerialLine.StopBits stopBits(double bits) {
        if (bits == 1) {
            return SerialLine.StopBits.ONE;
        }
        return bits == 2 ? SerialLine.StopBits.TWO : SerialLine.StopBits.ONE_AND_A_HALF;
    }
}
