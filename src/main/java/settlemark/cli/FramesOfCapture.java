package settlemark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.measure.Chunk;
import settlemark.profile.Input;
import settlemark.profile.Profile;
import settlemark.session.CaptureHeader;
import settlemark.session.CaptureProblem;
import settlemark.session.CaptureSink;
import settlemark.session.LinkChange;
import settlemark.session.SessionEvent;

/** Picks from a capture the chunks of one message of one probe, in pieces between the holes of the stream. */
final class FramesOfCapture implements CaptureSink {
    /** What is explained is held in memory at once. */
    static final int MOST_BYTES = 1 << 20;

    private final Profile profile;
    private final int message;
    private final Optional<String> wanted;
    private final List<List<Chunk>> pieces = new ArrayList<>();
    private final List<CaptureProblem> problems = new ArrayList<>();
    private List<String> names = List.of();
    private int probe = -1;
    private long bytes;
    private long leftOut;
    private boolean whole = true;

    /** @param wanted name of the probe, empty for the only one */
    FramesOfCapture(Profile profile, int message, Optional<String> wanted) {
        this.profile = profile;
        this.message = message;
        this.wanted = wanted;
    }

    @Override
    public void begun(CaptureHeader header) {
        names = header.probes().stream().map(CaptureHeader.Probe::name).toList();
        probe = wanted.map(names::indexOf).orElse(names.size() == 1 ? 0 : -1);
    }

    @Override
    public void heard(SessionEvent event) {
        if (event instanceof SessionEvent.Bytes arrived && arrived.probe() == probe) {
            add(arrived.chunk());
        } else if (event instanceof SessionEvent.Link link
                && link.probe() == probe
                && (link.change() == LinkChange.LOST || link.change() == LinkChange.OVERRUN)) {
            whole = true;
        }
    }

    private void add(Chunk chunk) {
        List<Input> inputs = profile.inputs();
        if (chunk.input() < 0
                || chunk.input() >= inputs.size()
                || !inputs.get(chunk.input()).equals(new Input(Input.Kind.FRAMES, message))) {
            return;
        }
        if (bytes + chunk.bytes().length > MOST_BYTES || leftOut > 0) {
            leftOut += chunk.bytes().length;
            return;
        }
        bytes += chunk.bytes().length;
        if (whole) {
            pieces.add(new ArrayList<>());
            whole = false;
        }
        pieces.get(pieces.size() - 1).add(chunk);
    }

    @Override
    public void problem(CaptureProblem problem) {
        problems.add(problem);
    }

    /** Whether it is clear which probe is meant. */
    boolean hasProbe() {
        return probe >= 0;
    }

    List<String> names() {
        return names;
    }

    List<List<Chunk>> pieces() {
        return pieces;
    }

    List<CaptureProblem> problems() {
        return problems;
    }

    /** Bytes behind the first {@link #MOST_BYTES}. */
    long leftOut() {
        return leftOut;
    }
}
