package settlemark.app;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Chunk;
import settlemark.profile.Profile;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/** Ports with gauges in them that say one line over and over as soon as they are opened. */
final class PluggedGauges implements ProbeHost {
    private static final int LINES = 10;

    private final Map<String, Gauge> gauges = new LinkedHashMap<>();
    private final List<String> opened = new ArrayList<>();
    private boolean blind;

    private record Gauge(String identity, String line) {}

    void plugIn(String port, String identity, String line) {
        gauges.put(port, new Gauge(identity, line));
    }

    void cannotSayWhatIsInReach() {
        blind = true;
    }

    /** The ports in the order in which they were opened. */
    List<String> opened() {
        return opened;
    }

    private Gauge at(ProbeAddress address) throws LinkException {
        Gauge gauge = gauges.get(address.path());
        if (gauge == null) {
            throw new LinkException("nothing is plugged in at " + address);
        }
        return gauge;
    }

    @Override
    public String scheme() {
        return "serial";
    }

    @Override
    public List<FoundProbe> found() throws LinkException {
        if (blind) {
            throw new LinkException("the ports cannot be listed");
        }
        return gauges.entrySet().stream()
                .map(e -> new FoundProbe(
                        new ProbeAddress("serial", e.getKey()),
                        "gauge",
                        Optional.empty(),
                        e.getValue().identity()))
                .toList();
    }

    @Override
    public String identity(ProbeAddress address) throws LinkException {
        return at(address).identity();
    }

    @Override
    public ProbeLink open(ProbeAddress address, Profile profile, Ticker ticker, LinkListener listener)
            throws LinkException {
        byte[] line = at(address).line().getBytes(StandardCharsets.US_ASCII);
        opened.add(address.path());
        listener.changed(ticker.nanos(), LinkChange.UP, "opened");
        for (int i = 0; i < LINES; i++) {
            listener.arrived(new Chunk(ticker.nanos(), line));
        }
        return new Silent();
    }

    /** Everything has been said. */
    private static final class Silent implements ProbeLink {
        @Override
        public void send(byte[] bytes) throws LinkException {
            throw new LinkException("these gauges take no bytes");
        }

        @Override
        public void close() {}
    }
}
