package settlemark.profile;

import com.google.re2j.Pattern;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * One step of a start-up or an action: something is sent, then an answer is waited for, then a pause is made; each where
 * it is given.
 *
 * @param send what is sent
 * @param expect what must come; only on serial lines
 * @param timeOutSeconds until the answer counts as missing
 * @param retries further sendings before the step has failed
 * @param waitSeconds pause afterwards, 0 or more
 * @param line where the profile describes it
 */
public record Step(
        Optional<Send> send,
        Optional<Expect> expect,
        double timeOutSeconds,
        int retries,
        double waitSeconds,
        int line) {
    public Step {
        if (!(timeOutSeconds > 0) || retries < 0 || !(waitSeconds >= 0)) {
            throw new IllegalArgumentException("a step needs a time-out above 0 s and a wait of 0 s or more");
        }
    }

    /** What a step sends. */
    public sealed interface Send {}

    /** Bytes on a serial line. */
    public record Bytes(ByteText bytes) implements Send {
        public Bytes {
            Objects.requireNonNull(bytes);
        }
    }

    /**
     * A value of a Bluetooth Low Energy characteristic.
     *
     * @param uuid of the characteristic
     * @param bytes its value
     * @param withResponse whether the device must acknowledge the write
     */
    public record Write(UUID uuid, ByteText bytes, boolean withResponse) implements Send {
        public Write {
            Objects.requireNonNull(uuid);
            Objects.requireNonNull(bytes);
        }
    }

    /**
     * Holding registers of a Modbus device; one by function 6, more by function 16.
     *
     * @param first address of the first register as it travels
     * @param words 1 to 123 values of 16 bits
     */
    public record SetRegisters(int first, List<Integer> words) implements Send {
        public SetRegisters {
            words = List.copyOf(words);
            if (words.isEmpty() || words.size() > 123 || first < 0 || first + words.size() > 0x10000) {
                throw new IllegalArgumentException("1 to 123 registers lie within 0 to 65535");
            }
        }
    }

    /** What must be found in the bytes that have come since the sending. */
    public sealed interface Expect {}

    /** These bytes, anywhere. */
    public record ExpectBytes(ByteText bytes) implements Expect {
        public ExpectBytes {
            Objects.requireNonNull(bytes);
        }
    }

    /** A match of the pattern, anywhere, in the bytes as ISO 8859-1 characters. */
    public record ExpectPattern(Pattern pattern) implements Expect {
        public ExpectPattern {
            Objects.requireNonNull(pattern);
        }
    }
}
