package settlemark.link;

import java.util.ArrayList;
import java.util.List;
import settlemark.profile.Poll;
import settlemark.profile.Source;

/** The characteristics of a profile that are read, each at its own period. */
final class BleReads {
    /** Reads of one characteristic that may fail in a row. */
    private static final int FAILURES = 3;

    private final BleDialogue dialogue;
    private final BleInbox inbox;
    private final List<Reading> readings = new ArrayList<>();

    BleReads(BleDialogue dialogue, BleInbox inbox) {
        this.dialogue = dialogue;
        this.inbox = inbox;
    }

    /** Reads each once; one that fails is a fault. */
    void begin(BleGatt gatt, String device) throws BluezError {
        readings.clear();
        for (BleGatt.Wanted wanted : gatt.wanted()) {
            String path = gatt.path(device, wanted.source()).orElse("");
            if (wanted.source().by() == Source.By.READ && !path.isEmpty()) {
                Reading reading =
                        new Reading(wanted.input(), path, wanted.source().poll());
                reading.read();
                readings.add(reading);
            }
        }
    }

    /**
     * Reads what is due.
     *
     * @return nanoseconds until the next is due
     */
    long tend() throws BluezError {
        long due = Long.MAX_VALUE;
        for (Reading reading : readings) {
            if (!reading.poll.isOnce()) {
                if (reading.dueNanos() <= 0) {
                    reading.tryRead();
                }
                due = Math.min(due, Math.max(1, reading.dueNanos()));
            }
        }
        return due;
    }

    private final class Reading {
        private final int input;
        private final String path;
        private final Poll poll;
        private final long periodNanos;
        private long nextNanos;
        private int failed;

        Reading(int input, String path, Poll poll) {
            this.input = input;
            this.path = path;
            this.poll = poll;
            this.periodNanos = poll.isOnce() ? Long.MAX_VALUE / 4 : Math.round(poll.periodSeconds() * 1e9);
        }

        long dueNanos() {
            return nextNanos - System.nanoTime();
        }

        void tryRead() throws BluezError {
            try {
                read();
                failed = 0;
            } catch (BluezError e) {
                failed++;
                if (failed >= FAILURES || e.is("NotConnected") || e.name().equals(BluezError.BUS_LOST)) {
                    throw e;
                }
            }
        }

        void read() throws BluezError {
            nextNanos = System.nanoTime() + periodNanos;
            inbox.add(input, dialogue.read(path, Bluez.CHARACTERISTIC, poll));
        }
    }
}
