package settlemark.exchange;

import java.util.Optional;
import settlemark.decode.ChecksumCheck;
import settlemark.profile.Framing;
import settlemark.profile.Message;

/**
 * Finds the first whole frame in what came since a question. Junk and frames with a wrong checksum are passed over a byte
 * or a line at a time, so that a good frame behind them is found.
 */
sealed interface FrameScan permits LineScan, CountedScan, MarkedScan, SilenceScan {
    Look find(byte[] bytes, int from, int to);

    /** @throws IllegalArgumentException where the framing cannot end an answer on a serial line */
    static FrameScan of(Message message) {
        Framing framing = message.framing();
        Optional<ChecksumCheck> check = message.checksum().map(ChecksumCheck::new);
        if (framing instanceof Framing.Line line) {
            return new LineScan(line, check);
        } else if (framing instanceof Framing.Marked marked) {
            return new MarkedScan(marked, check);
        } else if (framing instanceof Framing.Cobs cobs) {
            return MarkedScan.of(cobs);
        } else if (framing instanceof Framing.IdleGap gap) {
            return new SilenceScan(gap.maximumBytes());
        } else if (framing instanceof Framing.Packet) {
            throw new IllegalArgumentException("message \"" + message.id()
                    + "\" is framed by packets, which a serial line does not have: give its framing, such as line");
        }
        return new CountedScan(framing, check);
    }

    static boolean isGood(Optional<ChecksumCheck> check, byte[] bytes, int from, int to) {
        return check.isEmpty() || check.get().complaint(bytes, from, to) == null;
    }
}
