package settlemark.exchange;

import java.util.Optional;

/**
 * Sees requests that somebody else makes on a Modbus line: bytes with a right CRC that have the shape of a request, or of
 * an answer that nobody here asked for.
 */
final class OtherMaster {
    private static final int LONGEST_FRAME = 256;
    private static final int REQUEST_BYTES = 8;
    private static final int WRITE_COIL = 5;

    private final byte[] recent = new byte[2 * LONGEST_FRAME];
    private int size;

    void forget() {
        size = 0;
    }

    /** @param answersToo whether an answer counts: not while an answer of our own may be late */
    Optional<String> seen(byte[] bytes, int from, int to, boolean answersToo) {
        for (int at = from; at < to; at += LONGEST_FRAME) {
            int count = Math.min(LONGEST_FRAME, to - at);
            int kept = Math.min(size, LONGEST_FRAME);
            System.arraycopy(recent, size - kept, recent, 0, kept);
            System.arraycopy(bytes, at, recent, kept, count);
            size = kept + count;
            Optional<String> words = search(answersToo);
            if (words.isPresent()) {
                return words;
            }
        }
        return Optional.empty();
    }

    private Optional<String> search(boolean answersToo) {
        for (int i = 0; i + ModbusFrames.EXCEPTION_BYTES <= size; i++) {
            int unit = ModbusFrames.at(recent, i);
            int function = ModbusFrames.at(recent, i + 1);
            if (unit > 247 || !known(function & ~ModbusFrames.EXCEPTION_BIT)) {
                continue;
            }
            if (isRequest(i, function)) {
                return Optional.of("asks unit " + unit + " by function " + function);
            }
            if (answersToo && isAnswer(i, function)) {
                return Optional.of("is answered by unit " + unit + ", function " + (function & 0x7F));
            }
        }
        return Optional.empty();
    }

    private static boolean known(int function) {
        return function >= 1 && function <= 6 || function == 15 || function == ModbusFrames.WRITE_SEVERAL;
    }

    private boolean isRequest(int at, int function) {
        if (function == ModbusFrames.WRITE_SEVERAL || function == 15) {
            int end = at + 9 + (at + 6 < size ? ModbusFrames.at(recent, at + 6) : LONGEST_FRAME);
            return sealed(at, end);
        }
        int count = at + 6 <= size ? ModbusFrames.word(recent, at + 4) : 0;
        boolean likely = function == WRITE_COIL || function == ModbusFrames.WRITE_ONE || count >= 1 && count <= 2000;
        return function < ModbusFrames.EXCEPTION_BIT && likely && sealed(at, at + REQUEST_BYTES);
    }

    private boolean isAnswer(int at, int function) {
        if (function >= ModbusFrames.EXCEPTION_BIT) {
            return sealed(at, at + ModbusFrames.EXCEPTION_BYTES);
        }
        return function <= 4 ? sealed(at, at + 5 + ModbusFrames.at(recent, at + 2)) : sealed(at, at + REQUEST_BYTES);
    }

    private boolean sealed(int from, int to) {
        return to <= size && ModbusFrames.isSealed(recent, from, to);
    }
}
