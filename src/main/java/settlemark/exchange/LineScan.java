package settlemark.exchange;

import java.util.Optional;
import settlemark.decode.ChecksumCheck;
import settlemark.profile.Framing;

/** The first line that is not blank, not too long, and right by its checksum where it has one. */
record LineScan(Framing.Line line, Optional<ChecksumCheck> check) implements FrameScan {
    @Override
    public Look find(byte[] bytes, int from, int to) {
        byte[] end = line.end().toBytes();
        int start = from;
        while (start < to) {
            int at = Search.indexOf(bytes, start, to, end);
            if (at < 0) {
                return Look.MORE;
            }
            int next = at + end.length;
            if (next - start <= line.maximumBytes()
                    && !Search.isBlank(bytes, start, at)
                    && FrameScan.isGood(check, bytes, start, at)) {
                return Look.good(start, next);
            }
            start = next;
        }
        return Look.MORE;
    }
}
