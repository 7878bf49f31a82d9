package settlemark.exchange;

import settlemark.profile.ByteText;
import settlemark.profile.Framing;
import settlemark.profile.Message;

/**
 * A request in bytes whose answer is one frame of a message.
 *
 * @param request what is written
 * @param framing how its answer ends
 * @param scan finds a whole frame
 */
record AskedMessage(ByteText request, Framing framing, FrameScan scan) implements Question {
    static AskedMessage of(Message message, ByteText request) {
        return new AskedMessage(request, message.framing(), FrameScan.of(message));
    }

    @Override
    public byte[] bytes() {
        return request.toBytes();
    }

    @Override
    public String words() {
        return Quoted.of(request.toBytes());
    }

    @Override
    public int answerBytes() {
        return framing instanceof Framing.Fixed fixed ? fixed.maximumBytes() : 0;
    }

    @Override
    public Look look(byte[] bytes, int from, int to) {
        return scan.find(bytes, from, to);
    }

    @Override
    public long endedByNanos() {
        return framing instanceof Framing.IdleGap gap ? gap.gapNanos() : 0;
    }
}
