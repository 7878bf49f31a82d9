package settlemark.ui;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.Bench;
import settlemark.session.BenchView;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;

/** Benches of many channels, each probe the demo's set of them, after some minutes. */
final class BenchScenes {
    static final Profile SET = ProfileLibrary.get("demo-set-ble");
    private static final long TENTH = 100_000_000L;
    private static final int TENTHS = 3000;

    private BenchScenes() {}

    private static SessionHeader header(int probes) {
        List<ProbeSetup> all = new ArrayList<>();
        for (int i = 0; i < probes; i++) {
            all.add(new ProbeSetup(
                    "bench-" + (i + 1),
                    new ProbeAddress(ProbeAddress.SERIAL, "/dev/ttyUSB" + i),
                    SET,
                    i == 0 ? Map.of(SET.channels().get(0).name(), Role.MANIFOLD) : Map.of()));
        }
        return new SessionHeader(
                "key",
                "Gauges against each other",
                Instant.parse("2026-03-14T09:31:00Z"),
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                all,
                Optional.empty(),
                Optional.empty(),
                "test");
    }

    /** Some stand still, some move, one is over its range, one was never heard, and the last probe fell silent. */
    static BenchView view(int probes) {
        SessionHeader header = header(probes);
        Bench bench = new Bench(header);
        List<Channel> channels = SET.channels();
        for (int t = 0; t < TENTHS; t++) {
            for (int p = 0; p < probes; p++) {
                for (int c = 0; c < channels.size(); c++) {
                    boolean heard = p < probes - 1 || t < TENTHS - 200;
                    boolean never = p == 0 && c == channels.size() - 1;
                    if (heard && !never) {
                        boolean over = p == 0 && c == 1 && t > TENTHS - 10;
                        double moves = c % 2 == 0 ? 0 : 0.01 * t;
                        bench.sample(
                                p,
                                c,
                                t * TENTH,
                                over ? Double.NaN : 40 + 3 * p + moves,
                                over ? SampleStatus.OVER_RANGE : SampleStatus.OK);
                    }
                }
            }
        }
        LiveSession session = new LiveSession(header);
        session.passTo((TENTHS - 1) * TENTH);
        return bench.view(session.snapshot(header.startedAt().plusSeconds(TENTHS / 10)));
    }

    static BenchController controller(Look look, int probes) {
        BenchView view = view(probes);
        return new BenchController(look, () -> view, () -> {}, () -> {});
    }
}
