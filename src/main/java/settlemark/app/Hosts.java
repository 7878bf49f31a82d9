package settlemark.app;

import java.util.List;
import settlemark.link.BleHost;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;

/** The outside, one host a scheme of addresses. None of them touches anything before it is asked for something. */
final class Hosts implements AutoCloseable {
    private final List<ProbeHost> all;

    Hosts(ProbeHost... all) {
        this.all = List.of(all);
    }

    /** The host that serves an address. */
    ProbeHost of(ProbeAddress address) throws LinkException {
        for (ProbeHost host : all) {
            if (host.scheme().equals(address.scheme())) {
                return host;
            }
        }
        throw new LinkException("nothing here opens \"" + address + "\"; addresses begin with "
                + String.join(" or ", all.stream().map(h -> h.scheme() + ":").toList()));
    }

    List<ProbeHost> all() {
        return all;
    }

    @Override
    public void close() {
        for (ProbeHost host : all) {
            if (host instanceof BleHost ble) {
                ble.close();
            }
        }
    }
}
