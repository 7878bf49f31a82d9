package settlemark.link;

import java.util.Optional;
import settlemark.link.CaptureWords.DamageException;
import settlemark.measure.Chunk;
import settlemark.session.CaptureSink;
import settlemark.session.LinkChange;
import settlemark.session.SessionEvent;

/** The lines of a capture that say what happened when. */
final class CaptureEvents {
    private static final int ALL = -1;

    private final CaptureHead head;
    private final CaptureSink sink;
    private long count;
    private long[] lastNanos = new long[0];
    private long latestNanos;

    /** Whose line is being read, {@link #ALL} as long as that is not known. */
    private int probe = ALL;

    CaptureEvents(CaptureHead head, CaptureSink sink) {
        this.head = head;
        this.sink = sink;
    }

    long count() {
        return count;
    }

    /** Reads what stands behind the time. */
    void read(long nanos, CaptureWords words) throws DamageException {
        probe = ALL;
        String name = words.word();
        int found = head.indexOf(name);
        if (found < 0) {
            throw words.damage(
                    "no probe " + CaptureWords.shown(name) + ": " + head.names() + "; this line is left out");
        }
        probe = found;
        SessionEvent event = event(nanos, words);
        long last = last(probe, nanos);
        count++;
        sink.heard(event);
        probe = ALL;
        if (nanos < last) {
            throw new DamageException(
                    1,
                    "time goes back, from " + CaptureText.seconds(last) + " to " + CaptureText.seconds(nanos)
                            + "; the line is read as it stands",
                    true);
        }
    }

    private SessionEvent event(long nanos, CaptureWords words) throws DamageException {
        String what = words.word();
        Optional<LinkChange> change = CaptureText.change(what);
        if (change.isPresent()) {
            return new SessionEvent.Link(probe, nanos, change.get(), words.rest());
        }
        return new SessionEvent.Bytes(probe, new Chunk(nanos, input(what, words), words.bytes()));
    }

    private static int input(String word, CaptureWords words) throws DamageException {
        if (word.equals(CaptureText.STRAY)) {
            return Chunk.STRAY;
        }
        if (word.matches("[0-9]{1,3}")) {
            return Integer.parseInt(word);
        }
        throw words.damage(
                "behind the probe stands an input from 0 to 999, stray, up, lost, back, overrun or ended, got "
                        + CaptureWords.shown(word) + "; this line is left out");
    }

    private long last(int index, long nanos) {
        if (lastNanos.length == 0) {
            lastNanos = new long[head.probeCount()];
        }
        long last = lastNanos[index];
        lastNanos[index] = nanos;
        latestNanos = nanos;
        return last;
    }

    /** A line was lost: no frame may reach across it. */
    void hole(long line) {
        for (int i = 0; i < head.probeCount(); i++) {
            if (probe == ALL || probe == i) {
                sink.heard(new SessionEvent.Link(
                        i, latestNanos, LinkChange.LOST, "line " + line + " of the capture is damaged"));
            }
        }
        probe = ALL;
    }
}
