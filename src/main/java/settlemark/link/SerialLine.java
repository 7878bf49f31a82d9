package settlemark.link;

import settlemark.profile.Profile;

/**
 * How a serial line is set.
 *
 * @param baud bits a second, 50 to 4,000,000
 * @param dataBits 5 to 8
 * @param parity the parity bit
 * @param stopBits 1 or 2
 */
record SerialLine(int baud, int dataBits, Parity parity, int stopBits) {
    static final SerialLine DEFAULT = new SerialLine(115_200, 8, Parity.NONE, 1);

    enum Parity {
        NONE,
        ODD,
        EVEN
    }

    SerialLine {
        require("baud", baud, 50, 4_000_000);
        require("data bits", dataBits, 5, 8);
        require("stop bits", stopBits, 1, 2);
    }

    /** What the profile says, else 115200 baud, 8N1. */
    static SerialLine of(Profile profile) {
        return DEFAULT;
    }

    /** Such as {@code 115200 baud, 8N1}. */
    @Override
    public String toString() {
        return baud + " baud, " + dataBits + parity.name().charAt(0) + stopBits;
    }

    private static void require(String what, int value, int min, int max) {
        if (value < min || value > max) {
            throw new IllegalArgumentException(what + " must be " + min + " to " + max + ", got " + value);
        }
    }
}
