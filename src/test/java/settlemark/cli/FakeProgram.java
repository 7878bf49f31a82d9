package settlemark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.link.CaptureReader;
import settlemark.session.CaptureReading;
import settlemark.session.CaptureSink;
import settlemark.session.DeviceList;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.RereadReport;
import settlemark.session.StoreTools;
import settlemark.session.WhatIfReport;
import settlemark.settle.SettleChoices;

/** Keeps what the commands ask for; reads captures as the program does. */
final class FakeProgram implements Program, StoredDesk {
    final FakeInstruments instruments = new FakeInstruments();
    final List<Object> asked = new ArrayList<>();
    final List<ProbeHost.FoundProbe> inReach = new ArrayList<>();

    final List<DeviceList.Remembered> remembered = new ArrayList<>();
    final List<String> remarks = new ArrayList<>();
    static final Instant NOW = Instant.parse("2026-03-14T09:30:00Z");

    /** What the tools find. */
    final FakeTools tools = new FakeTools();

    /** What a log ends with. */
    @Nullable
    LinkException linkFault;

    @Override
    public void quiet(boolean quiet) {}

    @Override
    public boolean speaks(String code) {
        return code.equals("en") || code.equals("de");
    }

    @Override
    public int demo(Demo request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int desktop(Desk request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int log(Log request, PrintWriter out, PrintWriter err) throws LinkException {
        if (linkFault != null) {
            throw linkFault;
        }
        return asked(request);
    }

    @Override
    public int jobs(Optional<Path> workspace, PrintWriter out) {
        return asked(workspace);
    }

    @Override
    public int job(Job request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int newJob(NewJob request, JobPerson person, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public void beside(String name, Runnable work) {
        asked.add(name);
    }

    @Override
    public int resumeJob(ResumeJob request, JobPerson person, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int rig(Rig request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public InstrumentDesk instruments() {
        return instruments;
    }

    @Override
    public StoredDesk stored() {
        return this;
    }

    @Override
    public SessionDesk sessions() {
        throw new UnsupportedOperationException("not asked for in these tests");
    }

    @Override
    public int verify(Verify request, PrintWriter out, PrintWriter err) {
        asked.add(request);
        return DONE;
    }

    @Override
    public int record(Record request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int replay(Replay request, PrintWriter out, PrintWriter err) {
        asked.add(request);
        return DONE;
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
    public int whatIf(WhatIf request, Consumer<WhatIfReport> report, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int settings(SettleSettings request, Consumer<SettleChoices> shown, PrintWriter err) {
        shown.accept(request.choices());
        return asked(request);
    }

    @Override
    public DeviceList devices(Look request) {
        asked.add(request);
        return DeviceList.of(inReach, remembered, request.profiles(), NOW, remarks);
    }

    @Override
    public void pair(ProbeAddress address, PairingPerson person) throws LinkException {
        asked.add(address);
        if (!person.confirm("Probe 1", 42) || person.passkey("Probe 1").orElse(0) != 123456) {
            throw new LinkException("probe Probe 1 was not paired, as you chose");
        }
    }

    @Override
    public void forget(ProbeAddress address) throws LinkException {
        asked.add(address);
        if (linkFault != null) {
            throw linkFault;
        }
    }

    @Override
    public CaptureReading readCapture(Path file, CaptureSink sink) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return CaptureReader.read(in, sink);
        }
    }

    @Override
    public StoreTools tools() {
        return tools;
    }

    @Override
    public Path ownWorkspace() {
        return Path.of("own.settlemark");
    }

    @Override
    public Instant now() {
        return NOW;
    }

    @Override
    public int export(Export request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    @Override
    public int importSamples(Import request, PrintWriter out, PrintWriter err) {
        return asked(request);
    }

    private int asked(Object request) {
        asked.add(request);
        return DONE;
    }
}
