package settlemark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import settlemark.link.CaptureReader;
import settlemark.session.CaptureReading;
import settlemark.session.CaptureSink;
import settlemark.session.ProbeHost;
import settlemark.session.RereadReport;

/** Keeps what the commands ask for; reads captures as the program does. */
final class FakeProgram implements Program {
    final List<Object> asked = new ArrayList<>();
    final List<ProbeHost.FoundProbe> inReach = new ArrayList<>();

    @Override
    public void quiet(boolean quiet) {}

    @Override
    public int demo(Demo request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int log(Log request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int rig(Rig request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int record(Record request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int capture(Capture request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int reread(Reread request, Consumer<RereadReport> report, PrintWriter err) {
        return asked(request);
    }

    @Override
    public List<ProbeHost.FoundProbe> inReach() {
        return inReach;
    }

    @Override
    public CaptureReading readCapture(Path file, CaptureSink sink) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return CaptureReader.read(in, sink);
        }
    }

    private int asked(Object request) {
        asked.add(request);
        return DONE;
    }
}
