package settlemark.link;

import static settlemark.link.BleVmChecks.require;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.LinkChange;
import settlemark.session.LinkListener;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.settle.SettleState;

/** A steady value, and a gap in it: no reading reaches across. */
final class BleVmReading {
    private final BleVmBench bench;

    BleVmReading(BleVmBench bench) {
        this.bench = bench;
    }

    List<BleVmScenario> all() {
        return List.of(new BleVmScenario("a reading across a gap is not called settled", this::gap));
    }

    private String gap() throws Exception {
        bench.peer("serve f four hci1 Settle_four");
        Heard heard = new Heard(bench.addressOf("hci1"));
        try (ProbeLink link = bench.open("hci1", "four", heard)) {
            require(!link.toString().isEmpty(), "a link");
            Await.until("subscribed", 10_000, () -> bench.peer("listened f 0").equals("true"));
            bench.peer("wide f 0 10 100000");
            BleVmChecks.calmly("settled", 120, () -> heard.state().settled());
            bench.disconnectFrom("hci1");
            Await.until("lost", 15_000, () -> heard.lostSeconds() > 0);
            require(!heard.state().settled(), "settled after the loss: " + heard.state());
            Await.until("values again", 30_000, () -> heard.backSeconds() > 0);
            require(!heard.state().settled(), "settled with the first value after the gap: " + heard.state());
            BleVmChecks.calmly("settled again", 120, () -> heard.state().settled());
            double start = heard.state().windowStartSeconds();
            require(
                    start >= heard.backSeconds(),
                    "a window from " + start + " s, back at " + heard.backSeconds() + " s");
            return String.format(
                    Locale.ROOT,
                    "lost at %.1f s, back at %.1f s, the next settled window begins at %.1f s",
                    heard.lostSeconds(),
                    heard.backSeconds(),
                    start);
        } finally {
            bench.peer("close f");
        }
    }

    /** The program's own pipeline behind a link. */
    private static final class Heard implements LinkListener {
        private final LiveSession session;
        private double lostSeconds;
        private double backSeconds;

        Heard(String address) {
            ProbeSetup probe = new ProbeSetup(
                    "four", new ProbeAddress("ble", address), BleVmProfiles.of("four"), Map.of("p1", Role.MANIFOLD));
            session = new LiveSession(new SessionHeader(
                    "gap",
                    "gap",
                    Instant.EPOCH,
                    ZoneOffset.UTC,
                    Unit.INCH_OF_WATER,
                    Unit.FAHRENHEIT,
                    List.of(probe),
                    Optional.empty(),
                    Optional.empty(),
                    "test"));
        }

        @Override
        public synchronized void arrived(Chunk chunk) {
            if (lostSeconds > 0 && backSeconds == 0) {
                backSeconds = chunk.timeNanos() / 1e9;
            }
            session.take(new SessionEvent.Bytes(0, chunk));
        }

        @Override
        public synchronized void changed(long timeNanos, LinkChange change, String words) {
            if (change == LinkChange.LOST && lostSeconds == 0) {
                lostSeconds = timeNanos / 1e9;
            }
            session.take(new SessionEvent.Link(0, timeNanos, change, words));
        }

        synchronized SettleState state() {
            return session.snapshot(Instant.EPOCH)
                    .channel(Role.MANIFOLD)
                    .orElseThrow()
                    .settle();
        }

        synchronized double lostSeconds() {
            return lostSeconds;
        }

        synchronized double backSeconds() {
            return backSeconds;
        }
    }
}
