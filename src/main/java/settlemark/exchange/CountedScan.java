package settlemark.exchange;

import java.util.Optional;
import settlemark.decode.ChecksumCheck;
import settlemark.profile.ByteText;
import settlemark.profile.Framing;
import settlemark.profile.Wire;

/** Frames of one length, and frames that say their length. */
record CountedScan(Framing framing, Optional<ChecksumCheck> check) implements FrameScan {
    @Override
    public Look find(byte[] bytes, int from, int to) {
        byte[] start = startBytes().toBytes();
        for (int i = from; i < to; i++) {
            if (!Search.matches(bytes, i, start, Math.min(start.length, to - i))) {
                continue;
            }
            int length = length(bytes, i, to);
            if (length > 0 && i + length <= to && FrameScan.isGood(check, bytes, i, i + length)) {
                return Look.good(i, i + length);
            }
            // Without a checksum nothing tells a later start within this frame from a true one.
            if (check.isEmpty() && length >= 0) {
                return Look.MORE;
            }
        }
        return Look.MORE;
    }

    private ByteText startBytes() {
        return framing instanceof Framing.LengthField field ? field.start() : ((Framing.Fixed) framing).start();
    }

    /** Length of the frame at an index, 0 where it is not known yet, -1 where no frame has such a length. */
    private int length(byte[] bytes, int at, int to) {
        if (!(framing instanceof Framing.LengthField field)) {
            return framing.maximumBytes();
        }
        if (at + field.headerBytes() > to) {
            return 0;
        }
        long said = unsigned(bytes, at + field.at(), field.wire()) + field.adds();
        return said < field.headerBytes() || said > field.maximumBytes() ? -1 : (int) said;
    }

    /** At most four bytes, so that swapped words have one meaning each. */
    private static long unsigned(byte[] bytes, int at, Wire wire) {
        long value = 0;
        for (int i = 0; i < wire.bytes(); i++) {
            int place = switch (wire.order()) {
                case BIG -> i;
                case LITTLE -> wire.bytes() - 1 - i;
                case BIG_WORDS_SWAPPED -> wire.bytes() == 2 ? i : i ^ 2;
                case LITTLE_WORDS_SWAPPED -> wire.bytes() == 2 ? 1 - i : i ^ 1;
            };
            value = value << 8 | bytes[at + place] & 0xFF;
        }
        return value;
    }
}
