package settlemark.profile;

import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/** Where the bytes of a message come from. */
public sealed interface Source {
    /** The device sends them by itself on the serial line. */
    record Unasked() implements Source {}

    /**
     * The answer to a request on the serial line.
     *
     * @param request what is sent, one byte at least
     * @param poll when
     */
    record Answer(ByteText request, Poll poll) implements Source {
        public Answer {
            Objects.requireNonNull(poll);
            if (request.isEmpty()) {
                throw new IllegalArgumentException("a request has one byte at least");
            }
        }
    }

    /**
     * The answer of a Modbus device that is asked for registers. The message's frame is the whole answer: unit, function,
     * byte count, registers with the high byte first, CRC with the low byte first.
     *
     * @param function 3 (holding registers) or 4 (input registers)
     * @param first address of the first register as it travels, 0 to 65535
     * @param count registers, 1 to 125
     * @param poll when
     */
    record Registers(int function, int first, int count, Poll poll) implements Source {
        public Registers {
            Objects.requireNonNull(poll);
            if (function != 3 && function != 4) {
                throw new IllegalArgumentException("registers are read by function 3 or 4, got " + function);
            }
            if (first < 0 || count < 1 || count > 125 || first + count > 0x10000) {
                throw new IllegalArgumentException(
                        "1 to 125 registers lie within 0 to 65535, got " + count + " from " + first);
            }
        }

        /** Bytes of a good answer. */
        public int answerBytes() {
            return 5 + 2 * count;
        }
    }

    /**
     * The value of a Bluetooth Low Energy characteristic.
     *
     * @param service that it belongs to, empty for whichever has it
     * @param uuid of the characteristic
     * @param by how its values come
     * @param poll when it is read; only used with {@link By#READ}
     * @param presentation its Characteristic Presentation Format (0x2904), where it has one, replaces the scale and the
     *     unit of the message's first number
     * @param measurement its Environmental Sensing Measurement (0x290C), where it has one, is heard: what it says of period
     *     and accuracy goes before the profile's
     */
    record Characteristic(
            Optional<UUID> service, UUID uuid, By by, Poll poll, boolean presentation, boolean measurement)
            implements Source {
        /** Assigned number of the descriptor Characteristic Presentation Format. */
        public static final int PRESENTATION_FORMAT = 0x2904;

        /** Assigned number of the descriptor Environmental Sensing Measurement. */
        public static final int MEASUREMENT = 0x290C;

        public Characteristic {
            Objects.requireNonNull(uuid);
            Objects.requireNonNull(by);
            Objects.requireNonNull(poll);
        }
    }

    /** How the values of a characteristic come. */
    enum By {
        NOTIFY,
        INDICATE,
        READ
    }

    /**
     * Service data in Bluetooth Low Energy advertisements, without its UUID.
     *
     * @param service whose data it is
     */
    record ServiceData(UUID service) implements Source {
        public ServiceData {
            Objects.requireNonNull(service);
        }
    }

    /**
     * Manufacturer-specific data in Bluetooth Low Energy advertisements, without its company identifier.
     *
     * @param company identifier, 0 to 65535
     */
    record CompanyData(int company) implements Source {}
}
