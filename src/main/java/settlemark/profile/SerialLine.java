package settlemark.profile;

import java.util.Objects;

/**
 * Settings of a serial line.
 *
 * @param baud bits per second, 50 to 4,000,000
 * @param dataBits 5 to 8
 * @param parity the check bit
 * @param stopBits the pause after each character
 * @param flow who may stop the other from sending
 */
public record SerialLine(int baud, int dataBits, Parity parity, StopBits stopBits, Flow flow) {
    /** The check bit after the data bits. */
    public enum Parity {
        NONE,
        ODD,
        EVEN,
        MARK,
        SPACE
    }

    /** Length of the stop bit. */
    public enum StopBits {
        ONE,
        ONE_AND_A_HALF,
        TWO
    }

    /** Flow control; hardware is RTS/CTS, software XON/XOFF. */
    public enum Flow {
        NONE,
        HARDWARE,
        SOFTWARE
    }

    public SerialLine {
        Objects.requireNonNull(parity);
        Objects.requireNonNull(stopBits);
        Objects.requireNonNull(flow);
        if (baud < 50 || baud > 4_000_000) {
            throw new IllegalArgumentException("baud must be 50 to 4000000, got " + baud);
        }
        if (dataBits < 5 || dataBits > 8) {
            throw new IllegalArgumentException("data bits must be 5 to 8, got " + dataBits);
        }
    }
}
