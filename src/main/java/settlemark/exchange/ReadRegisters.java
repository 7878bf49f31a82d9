package settlemark.exchange;

import settlemark.profile.Source;

/**
 * Registers of a Modbus device are read. An answer is the right unit, function, byte count and CRC, wherever it stands
 * in what came; its length is known beforehand, so silence plays no part.
 *
 * @param unit address of the device on the line
 * @param source which registers
 */
record ReadRegisters(int unit, Source.Registers source) implements Question {
    @Override
    public byte[] bytes() {
        return ModbusFrames.read(unit, source.function(), source.first(), source.count());
    }

    @Override
    public String words() {
        int last = source.first() + source.count() - 1;
        String which = last == source.first() ? "register " + last : "registers " + source.first() + " to " + last;
        return which + " (function " + source.function() + ")";
    }

    @Override
    public int answerBytes() {
        return source.answerBytes();
    }

    @Override
    public Look look(byte[] bytes, int from, int to) {
        for (int i = from; i + ModbusFrames.EXCEPTION_BYTES <= to; i++) {
            if (ModbusFrames.at(bytes, i) == unit) {
                Look found = frameAt(bytes, i, to);
                if (found.kind() != Look.Kind.MORE) {
                    return found;
                }
            }
        }
        return Look.MORE;
    }

    private Look frameAt(byte[] bytes, int i, int to) {
        int function = ModbusFrames.at(bytes, i + 1);
        int said = ModbusFrames.at(bytes, i + 2);
        if (function == (source.function() | ModbusFrames.EXCEPTION_BIT)) {
            int end = i + ModbusFrames.EXCEPTION_BYTES;
            return ModbusFrames.isSealed(bytes, i, end)
                    ? new Look(Look.Kind.REFUSED, i, end, said, ModbusFrames.exceptionWords(said) + " at " + words())
                    : Look.MORE;
        }
        int end = i + 5 + said;
        if (function != source.function() || end > to || !ModbusFrames.isSealed(bytes, i, end)) {
            return Look.MORE;
        }
        return said == 2 * source.count()
                ? Look.good(i, end)
                : new Look(
                        Look.Kind.WRONG,
                        i,
                        end,
                        0,
                        "the answer has " + said + " bytes of registers where " + source.count() + " registers have "
                                + 2 * source.count());
    }
}
