package settlemark.rig;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import settlemark.profile.Profile;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/**
 * The demo rig's instruments as probes within reach, at {@code rig:gauge} and {@code rig:air}. It brings no thread and
 * no clock: bytes arrive on the thread that advances the rig, with the rig's time.
 */
public final class RigHost implements ProbeHost {
    public static final String SCHEME = "rig";

    private final DemoRig rig;

    public RigHost(DemoRig rig) {
        this.rig = rig;
    }

    public static ProbeAddress address(DemoInstrument instrument) {
        return new ProbeAddress(SCHEME, instrument.key());
    }

    @Override
    public String scheme() {
        return SCHEME;
    }

    @Override
    public List<FoundProbe> found() {
        return Arrays.stream(DemoInstrument.values())
                .map(i -> new FoundProbe(address(i), i.profile().name() + " (SIMULATED)"))
                .toList();
    }

    @Override
    public ProbeLink open(ProbeAddress address, Profile profile, Ticker ticker, LinkListener listener)
            throws LinkException {
        DemoInstrument instrument = DemoInstrument.ofKey(address.path())
                .orElseThrow(() -> new LinkException(
                        "the demo rig has no instrument \"" + address.path() + "\"; it has " + keys()));
        listener.changed(ticker.nanos(), LinkChange.UP, "simulated instrument " + instrument.key() + " connected");
        rig.connect(instrument, listener::arrived);
        return new RigLink(rig, instrument);
    }

    private static String keys() {
        return Arrays.stream(DemoInstrument.values()).map(DemoInstrument::key).collect(Collectors.joining(" and "));
    }

    /** The demo instruments listen to nothing. */
    private record RigLink(DemoRig rig, DemoInstrument instrument) implements ProbeLink {
        @Override
        public void send(byte[] bytes) {}

        @Override
        public void close() {
            rig.disconnect(instrument);
        }
    }
}
