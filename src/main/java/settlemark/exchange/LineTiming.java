package settlemark.exchange;

import settlemark.profile.SerialLine;

/**
 * How long characters and silences last on a line.
 *
 * @param nanosPerCharacter one start bit, the data bits, the check bit where there is one, and the stop bits
 * @param silenceNanos between two Modbus frames: 3.5 characters up to 19200 baud, 1.75 ms above (Modbus over Serial Line
 *     1.02, section 2.5.1.1)
 */
record LineTiming(double nanosPerCharacter, long silenceNanos) {
    private static final int FASTEST_COUNTED_BAUD = 19_200;
    private static final long FAST_SILENCE_NANOS = 1_750_000;

    static LineTiming of(SerialLine line) {
        double stop = switch (line.stopBits()) {
            case ONE -> 1;
            case ONE_AND_A_HALF -> 1.5;
            case TWO -> 2;
        };
        double bits = 1 + line.dataBits() + (line.parity() == SerialLine.Parity.NONE ? 0 : 1) + stop;
        double character = bits * 1e9 / line.baud();
        long silence = line.baud() > FASTEST_COUNTED_BAUD ? FAST_SILENCE_NANOS : (long) Math.ceil(3.5 * character);
        return new LineTiming(character, silence);
    }

    long transmissionNanos(int bytes) {
        return (long) Math.ceil(bytes * nanosPerCharacter);
    }
}
