package settlemark.app;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import settlemark.measure.Chunk;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.rig.RigHost;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.Ticker;

/** The rig within the program: bytes arrive on the thread that advances it, with its time. */
final class WireWiring implements DemoWiring {
    private static final long STEP_NANOS = 200_000_000;

    private final RigHost host;
    private final List<ProbeLink> links = new ArrayList<>();

    WireWiring(DemoRig rig) {
        this.host = new RigHost(rig);
    }

    @Override
    public List<ProbeSetup> probes() {
        return Arrays.stream(DemoInstrument.values())
                .map(i -> new ProbeSetup(i.key(), RigHost.address(i), i.profile(), i.roles()))
                .toList();
    }

    @Override
    public void open(SessionHeader header, Ticker ticker, Consumer<SessionEvent> taken) throws LinkException {
        for (int i = 0; i < header.probes().size(); i++) {
            ProbeSetup probe = header.probes().get(i);
            links.add(host.open(probe.address(), probe.profile(), ticker, listener(i, taken)));
        }
    }

    static LinkListener listener(int probe, Consumer<SessionEvent> taken) {
        return new LinkListener() {
            @Override
            public void arrived(Chunk chunk) {
                taken.accept(new SessionEvent.Bytes(probe, chunk));
            }

            @Override
            public void changed(long timeNanos, LinkChange change, String words) {
                taken.accept(new SessionEvent.Link(probe, timeNanos, change, words));
            }
        };
    }

    @Override
    public long stepNanos() {
        return STEP_NANOS;
    }

    @Override
    public void settle() {
        // It has come in already.
    }

    @Override
    public void close() {
        links.forEach(ProbeLink::close);
    }
}
