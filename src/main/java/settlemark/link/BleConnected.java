package settlemark.link;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Poll;
import settlemark.profile.Source;
import settlemark.profile.Step;
import settlemark.session.LinkException;

/**
 * The course of a probe that is connected: start-up, descriptors, subscriptions, reads; liveness by what arrives, for
 * "connected" and "notifying" prove nothing.
 */
final class BleConnected implements BleCourse {
    private static final long LOOK_NANOS = 500_000_000L;
    private static final Poll ONCE = new Poll(Double.NaN, 3, 1);

    private final BlePlace place;
    private final BleCentral central;
    private final BleLink link;
    private final BleGatt gatt;
    private final BleDial dial;
    private final BleDialogue dialogue;
    private final BleReads reads;
    private final Map<Integer, String> subscribed = new HashMap<>();
    private final Map<Integer, BleSilence> silences = new HashMap<>();
    private volatile BleDial.@Nullable Line line;
    /** When this connection began. */
    private boolean paired;

    /** In a row, while its values were asked for. */
    private int startsLost;

    BleConnected(BlePlace place, BleLink link) {
        this.place = place;
        this.central = place.central();
        this.link = link;
        this.gatt = new BleGatt(central.objects(), place.profile());
        this.dial = new BleDial(place, gatt, link);
        this.dialogue = new BleDialogue(place, gatt, link::isClosed);
        this.reads = new BleReads(dialogue, link.inbox());
        gatt.wanted().stream()
                .filter(w -> w.source().by() != Source.By.READ)
                .forEach(w -> BleSilence.of(place.profile(), w.input(), central.settings())
                        .ifPresent(s -> silences.put(w.input(), s)));
    }

    @Override
    public String begin() throws BleFault {
        BleDial.Line now = dial.line();
        line = now;
        paired = central.isPaired(now.device());
        boolean pairedNow;
        try {
            dialogue.perform(now.device(), place.profile().startUp());
            for (BleGatt.Found found : gatt.descriptors(now.device())) {
                link.inbox().add(found.input(), dialogue.read(found.path(), Bluez.DESCRIPTOR, ONCE));
            }
            subscribe(now.device());
            reads.begin(gatt, now.device());
            pairedNow = central.isPairedNow(now.device());
        } catch (BluezError e) {
            throw startFault(now, e);
        }
        undoUnaskedPairing(now, pairedNow);
        startsLost = 0;
        return "connected to " + place.words();
    }

    private void subscribe(String device) throws BluezError {
        subscribed.clear();
        for (BleGatt.Wanted wanted : gatt.wanted()) {
            String path = gatt.path(device, wanted.source()).orElse("");
            if (wanted.source().by() != Source.By.READ && !path.isEmpty()) {
                subscribed.put(wanted.input(), path);
                // First the place for its values, then the values.
                central.ears().route(path, new BleEars.Route(wanted.input(), link.inbox()));
                dialogue.startNotify(path);
            }
        }
        silences.values().forEach(BleSilence::restart);
    }

    /** A service that was refused a pairing ends the connection; so does a probe at the edge of reach, but not each time. */
    private BleFault startFault(BleDial.Line now, BluezError e) {
        if (!isLost(now) || startsLost++ == 0) {
            return fault(now, "its start-up", e);
        }
        link.settle();
        return place.loss(BleWords.endedWhenAsked(place.words()));
    }

    private BleFault fault(BleDial.Line now, String what, BluezError e) {
        if (isLost(now)) {
            link.settle();
            return place.loss();
        }
        if (BleDialogue.demandsPairing(e)) {
            return BleFault.lasting(BleWords.pairing(place.words()));
        }
        return e.is("NotSupported") || e.is("NotPermitted")
                ? BleFault.lasting(BleWords.refused(place.words(), what, e))
                : BleFault.passing(BleWords.refused(place.words(), what, e));
    }

    /** A value that demands a paired computer makes the service pair at once, without a word where nothing is compared. */
    private void undoUnaskedPairing(BleDial.Line now, boolean pairedNow) throws BleFault {
        String device = now.device();
        if (paired || !pairedNow || central.isAgreed(device)) {
            return;
        }
        try {
            central.forget(device);
        } catch (BluezError e) {
            throw BleFault.lasting(BleWords.pairedUnasked(place.words()));
        }
        throw BleFault.lasting(BleWords.pairing(place.words()));
    }

    private boolean isLost(BleDial.Line now) {
        return central.hearing().mark(now.device()) != now.mark();
    }

    @Override
    public long tend() throws BleFault {
        BleDial.Line now = line;
        if (now == null || isLost(now)) {
            link.settle();
            throw place.loss();
        }
        undoUnaskedPairing(now, central.isPaired(now.device()));
        try {
            long due = Math.min(LOOK_NANOS, reads.tend());
            for (Map.Entry<Integer, BleSilence> one : silences.entrySet()) {
                due = Math.min(due, listenFor(one.getKey(), one.getValue()));
            }
            return due;
        } catch (BluezError e) {
            throw fault(now, "a value", e);
        }
    }

    private long listenFor(int input, BleSilence silence) throws BleFault, BluezError {
        String path = subscribed.get(input);
        switch (silence.look()) {
            case STALE -> link.note(BleWords.silent(place.words(), silence.seconds()));
            case FORGOTTEN -> {
                link.note(BleWords.askedAnew(place.words(), silence.seconds()));
                if (path != null) {
                    dialogue.stopNotify(path);
                    dialogue.startNotify(path);
                }
            }
            case DEAD -> throw BleFault.passing(BleWords.silent(place.words(), silence.seconds()));
            case FINE -> {}
        }
        return silence.dueNanos();
    }

    @Override
    public void arrived(int input) {
        BleSilence silence = silences.get(input);
        if (silence != null) {
            silence.restart();
        }
    }

    @Override
    public boolean speaksByItself() {
        return !silences.isEmpty();
    }

    @Override
    public void end() {
        BleDial.Line now = line;
        line = null;
        central.ears().unroute(new ArrayList<>(subscribed.values()));
        subscribed.clear();
        if (now != null && !isLost(now)) {
            dial.hangUp(now.device());
        }
    }

    @Override
    public void perform(List<Step> steps) throws LinkException {
        BleDial.Line now = line;
        if (now == null) {
            throw new LinkException(place.words() + " is not connected: wait until it is back, then try again");
        }
        try {
            dialogue.perform(now.device(), steps);
        } catch (BluezError e) {
            throw new LinkException(
                    BleDialogue.demandsPairing(e)
                            ? BleWords.pairing(place.words())
                            : place.words() + " did not do it (" + e.getMessage() + "): try again",
                    e);
        }
    }
}
