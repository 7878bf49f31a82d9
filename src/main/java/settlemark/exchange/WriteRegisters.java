package settlemark.exchange;

import settlemark.profile.Step;

/**
 * Registers of a Modbus device are set; the device acknowledges with the same place and count, or the same value.
 *
 * @param unit address of the device on the line
 * @param step which registers, and what they become
 */
record WriteRegisters(int unit, Step.SetRegisters step) implements Question {
    private static final int ANSWER_BYTES = 8;

    @Override
    public byte[] bytes() {
        return ModbusFrames.write(unit, step.first(), step.words());
    }

    @Override
    public String words() {
        return (step.words().size() == 1 ? "setting register " : step.words().size() + " registers set from ")
                + step.first();
    }

    @Override
    public String expected() {
        return "an acknowledgement";
    }

    @Override
    public boolean mayBeRepeated() {
        return true;
    }

    @Override
    public Look look(byte[] bytes, int from, int to) {
        byte[] request = bytes();
        int function = request[1] & 0xFF;
        for (int i = from; i + ModbusFrames.EXCEPTION_BYTES <= to; i++) {
            int end = i + ModbusFrames.EXCEPTION_BYTES;
            if (ModbusFrames.at(bytes, i) == unit
                    && ModbusFrames.at(bytes, i + 1) == (function | ModbusFrames.EXCEPTION_BIT)
                    && ModbusFrames.isSealed(bytes, i, end)) {
                int code = ModbusFrames.at(bytes, i + 2);
                return new Look(Look.Kind.REFUSED, i, end, code, ModbusFrames.exceptionWords(code) + " for " + words());
            }
            if (i + ANSWER_BYTES <= to && acknowledges(request, bytes, i)) {
                return Look.good(i, i + ANSWER_BYTES);
            }
        }
        return Look.MORE;
    }

    /** Unit, function, place and then value or count are the request's own first six bytes. */
    private static boolean acknowledges(byte[] request, byte[] bytes, int at) {
        for (int i = 0; i < 6; i++) {
            if (bytes[at + i] != request[i]) {
                return false;
            }
        }
        return ModbusFrames.isSealed(bytes, at, at + ANSWER_BYTES);
    }
}
