package settlemark.link;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import settlemark.session.CaptureHeader;
import settlemark.session.CaptureProblem;
import settlemark.session.CaptureReading;
import settlemark.session.CaptureSink;
import settlemark.session.SessionEvent;

/** Keeps all that a capture says. */
final class HeardCapture implements CaptureSink {
    final List<CaptureHeader> headers = new ArrayList<>();
    final List<SessionEvent> events = new ArrayList<>();
    final List<CaptureProblem> problems = new ArrayList<>();
    CaptureReading reading = new CaptureReading(0, 0, false);

    static HeardCapture of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    static HeardCapture of(byte[] text) {
        HeardCapture heard = new HeardCapture();
        try {
            heard.reading = CaptureReader.read(new ByteArrayInputStream(text), heard);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return heard;
    }

    List<String> said() {
        return problems.stream().map(CaptureProblem::toString).toList();
    }

    @Override
    public void begun(CaptureHeader header) {
        headers.add(header);
    }

    @Override
    public void heard(SessionEvent event) {
        events.add(event);
    }

    @Override
    public void problem(CaptureProblem problem) {
        problems.add(problem);
    }
}
