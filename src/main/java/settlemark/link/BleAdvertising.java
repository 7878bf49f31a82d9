package settlemark.link;

import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Profile;
import settlemark.profile.Step;
import settlemark.session.LinkException;

/** The course of a probe that only advertises: a scan that goes on, and nothing is connected. */
final class BleAdvertising implements BleCourse {
    private static final Duration STEP = Duration.ofMillis(200);
    private static final long LOOK_NANOS = 500_000_000L;
    private static final double PERIODS = 3;

    private final BlePlace place;
    private final BleCentral central;
    private final BleLink link;
    private final BleAdverts adverts;
    private final long patienceNanos;
    private @Nullable BleScan scan;
    private String device = "";
    private long beginNanos;

    BleAdvertising(BlePlace place, BleLink link) {
        this.place = place;
        this.central = place.central();
        this.link = link;
        this.adverts = new BleAdverts(place.profile(), link.inbox());
        this.patienceNanos = Math.max(
                central.settings().scanSilence().toNanos(),
                Math.round(PERIODS * longestSeconds(place.profile()) * 1e9));
    }

    private static double longestSeconds(Profile profile) {
        return profile.channels().stream()
                .mapToDouble(c -> c.periodSeconds())
                .filter(s -> s > 0)
                .max()
                .orElse(0);
    }

    @Override
    public String begin() throws BleFault {
        String adapter = central.adapter(place.adapter());
        device = place.device(adapter);
        beginNanos = System.nanoTime();
        central.ears().listen(device, adverts);
        BleScan now = central.scan(adapter);
        scan = now;
        while (!central.hearing().heardSince(device, beginNanos)) {
            if (link.isClosed()) {
                throw BleDial.closing();
            }
            look(now, adapter);
            if (System.nanoTime() - beginNanos > central.settings().hear().toNanos()) {
                link.note(BleWords.notHeard(place.words()));
            }
            central.objects().await(() -> central.hearing().heardSince(device, beginNanos), STEP, link::isClosed);
        }
        return "hearing " + place.words();
    }

    @Override
    public long tend() throws BleFault {
        BleScan now = scan;
        if (now == null) {
            throw place.loss();
        }
        look(now, Bluez.adapterOf(device));
        if (!central.hearing().heardSince(device, System.nanoTime() - patienceNanos)) {
            throw BleFault.passing(BleWords.notHeard(place.words()));
        }
        return LOOK_NANOS;
    }

    private void look(BleScan now, String adapter) throws BleFault {
        if (!central.adapter(place.adapter()).equals(adapter) || central.scan(adapter) != now) {
            link.settle();
            throw BleFault.passing(
                    "the Bluetooth adapter went and came back; " + place.words() + " is listened for again");
        }
        now.want(this);
        now.tend();
    }

    @Override
    public void arrived(int input) {}

    @Override
    public boolean speaksByItself() {
        return true;
    }

    @Override
    public void end() {
        central.ears().unlisten(device);
        BleScan now = scan;
        scan = null;
        if (now != null) {
            now.leave(this);
        }
    }

    @Override
    public void perform(List<Step> steps) throws LinkException {
        throw new LinkException(place.words() + " only advertises: nothing can be written to it");
    }
}
