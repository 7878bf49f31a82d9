package settlemark.profile;

import java.util.Objects;

/** How a device is connected. */
public sealed interface Link {
    /**
     * A serial line on which the device speaks by itself or answers.
     *
     * @param line its settings
     */
    record Serial(SerialLine line) implements Link {
        public Serial {
            Objects.requireNonNull(line);
        }
    }

    /**
     * Modbus RTU on a serial line (Modbus over Serial Line 1.02). Several devices may share one line.
     *
     * @param line its settings
     * @param unit address of the device on the line, 1 to 247; an address of a probe may name another
     */
    record ModbusRtu(SerialLine line, int unit) implements Link {
        public ModbusRtu {
            Objects.requireNonNull(line);
            if (unit < 1 || unit > 247) {
                throw new IllegalArgumentException("a Modbus unit is 1 to 247, got " + unit);
            }
        }
    }

    /** Bluetooth Low Energy with a connection: characteristics are read or notify. */
    record BleConnected() implements Link {}

    /** Bluetooth Low Energy without a connection: everything stands in the advertisements. */
    record BleAdvertising() implements Link {}
}
