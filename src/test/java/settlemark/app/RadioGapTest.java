package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.link.BleHost;
import settlemark.link.RadioBench;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.LinkChange;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.Ticker;

/** A gauge by radio that goes out of range and comes back while a pressure stands still. */
@Timeout(120)
final class RadioGapTest {
    private static final Profile GAUGE = ProfileLibrary.get("demo-gauge-ble");
    private static final String SERVICE = "5e771e00-ba5e-4d3a-9c11-0000000000a0";
    private static final String VALUE = "5e771e00-ba5e-4d3a-9c11-0000000000a1";
    private static final String ADDRESS = "C0:FF:EE:00:00:01";
    private static final long PERIOD_NANOS = 100_000_000;

    private final BlockingQueue<SessionEvent> queue = new LinkedBlockingQueue<>();
    private volatile long nowNanos;
    private int sequence;
    private LiveSession session = new LiveSession(header());

    private static SessionHeader header() {
        return new SessionHeader(
                "key",
                "title",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(new ProbeSetup(
                        "gauge", new ProbeAddress(ProbeAddress.BLE, ADDRESS), GAUGE, Map.of("port-2", Role.MANIFOLD))),
                Optional.empty(),
                Optional.empty(),
                "test");
    }

    @Test
    void aGapUnsettlesAndNothingAcrossItIsCalledSettled() throws Exception {
        try (RadioBench bench = new RadioBench();
                BleHost host = bench.host(Optional.empty())) {
            RadioBench.Probe probe = bench.probe(ADDRESS, "Gauge");
            int value = probe.characteristic(SERVICE, VALUE);
            probe.characteristic("0000180f-0000-1000-8000-00805f9b34fb", "00002a19-0000-1000-8000-00805f9b34fb");
            ProbeLink link = host.open(
                    new ProbeAddress(ProbeAddress.BLE, ADDRESS), GAUGE, ticker(), WireWiring.listener(0, queue::add));
            int first = sendUntilSettled(probe, value);
            for (int i = 0; i < 20; i++) {
                send(probe, value);
            }
            assertThat(settled()).isTrue();
            probe.drop();
            take(e -> e instanceof SessionEvent.Link l && l.change() == LinkChange.LOST);
            assertThat(settled()).as("as soon as the link is lost").isFalse();
            RadioBench.await("listened to again", () -> probe.isListenedTo(value));
            nowNanos += 2_000_000_000L;
            int second = sendUntilSettled(probe, value);
            assertThat(second)
                    .as("values that it takes after the gap, as after the start")
                    .isGreaterThan(first / 2);
            long gapEnd = nowNanos - second * PERIOD_NANOS;
            assertThat(session.snapshot(Instant.EPOCH)
                            .channel(Role.MANIFOLD)
                            .orElseThrow()
                            .settledSpans())
                    .allSatisfy(span -> assertThat(span.toNanos() <= gapEnd || span.fromNanos() >= gapEnd)
                            .as("span " + span + " lies on one side of the gap at " + gapEnd)
                            .isTrue());
            link.close();
        }
    }

    private int sendUntilSettled(RadioBench.Probe probe, int value) throws InterruptedException {
        for (int i = 1; i < 1000; i++) {
            send(probe, value);
            if (settled()) {
                return i;
            }
        }
        throw new AssertionError("not settled after a thousand equal values");
    }

    /** 3.49 or 3.50 inH2O, in turns. */
    private void send(RadioBench.Probe probe, int value) throws InterruptedException {
        nowNanos += PERIOD_NANOS;
        sequence++;
        probe.send(
                value, (byte) sequence, (byte) (sequence >> 8), (byte) 0, (byte) 0, (byte) (0x5D + sequence % 2), (byte)
                        1);
        take(e -> e instanceof SessionEvent.Bytes b && b.chunk().input() == 0);
    }

    private boolean settled() {
        return session.snapshot(Instant.EPOCH)
                .channel(Role.MANIFOLD)
                .map(c -> c.settle().settled())
                .orElse(false);
    }

    private void take(Predicate<SessionEvent> until) throws InterruptedException {
        while (true) {
            SessionEvent event = queue.poll(20, TimeUnit.SECONDS);
            assertThat(event).as("within 20 s").isNotNull();
            session.take(event);
            if (until.test(event)) {
                return;
            }
        }
    }

    private Ticker ticker() {
        return new Ticker() {
            @Override
            public long nanos() {
                return nowNanos;
            }

            @Override
            public Instant wall() {
                return Instant.EPOCH.plusNanos(nowNanos);
            }
        };
    }
}
