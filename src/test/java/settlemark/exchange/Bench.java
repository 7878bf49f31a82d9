package settlemark.exchange;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import settlemark.measure.Chunk;
import settlemark.profile.Profile;

/** A line in simulated time: what the exchange writes goes to a far end, which answers when it likes. */
final class Bench {
    static final long MILLI = 1_000_000;

    /** Hears what is written. */
    interface FarEnd {
        void asked(byte[] bytes, Bench bench);
    }

    record Sent(long nanos, byte[] bytes) {
        String text() {
            return new String(bytes, StandardCharsets.US_ASCII);
        }
    }

    private record Arrival(long nanos, long order, byte[] bytes) {}

    /** Remembers what it hears. */
    static final class Ear implements ExchangeListener {
        final List<Chunk> chunks = new ArrayList<>();
        final List<String> said = new ArrayList<>();

        @Override
        public void arrived(Chunk chunk) {
            chunks.add(chunk);
        }

        @Override
        public void lost(long timeNanos, String words) {
            said.add("lost: " + words);
        }

        @Override
        public void back(long timeNanos, String words) {
            said.add("back: " + words);
        }

        @Override
        public void noted(long timeNanos, String words) {
            said.add("noted: " + words);
        }

        List<Chunk> of(int input) {
            return chunks.stream().filter(c -> c.input() == input).toList();
        }

        String text(int input) {
            StringBuilder all = new StringBuilder();
            of(input).forEach(c -> all.append(new String(c.bytes(), StandardCharsets.US_ASCII)));
            return all.toString();
        }
    }

    final Exchange exchange = new Exchange(Profiles.FAST);
    final List<Sent> sent = new ArrayList<>();
    final FarEnd far;
    long now;

    private final PriorityQueue<Arrival> arrivals =
            new PriorityQueue<>(Comparator.comparingLong(Arrival::nanos).thenComparingLong(Arrival::order));
    private long order;

    Bench(FarEnd far) {
        this.far = far;
    }

    Ear add(Profile profile) {
        Ear ear = new Ear();
        exchange.add(profile, 0, now, ear);
        return ear;
    }

    void arrivesAfter(double millis, byte[] bytes) {
        arrivals.add(new Arrival(now + Math.round(millis * MILLI), order++, bytes.clone()));
    }

    void arrivesAfter(double millis, String text) {
        arrivesAfter(millis, text.getBytes(StandardCharsets.US_ASCII));
    }

    void runMillis(double millis) {
        long end = now + Math.round(millis * MILLI);
        long turns = 0;
        while (true) {
            Outcome outcome = exchange.advance(now);
            if (++turns > 1_000_000) {
                throw new AssertionError("the exchange spins at " + now + " ns");
            }
            if (outcome.write().length > 0) {
                sent.add(new Sent(now, outcome.write()));
                far.asked(outcome.write(), this);
                continue;
            }
            long next = Math.min(end, outcome.untilNanos());
            if (!arrivals.isEmpty()) {
                next = Math.min(next, arrivals.peek().nanos);
            }
            now = Math.max(now, next);
            while (!arrivals.isEmpty() && arrivals.peek().nanos <= now) {
                byte[] bytes = arrivals.poll().bytes;
                exchange.received(now, bytes, 0, bytes.length);
            }
            if (now >= end) {
                return;
            }
        }
    }

    /** Registers of a device, whose values are unit * 1000 + address. */
    static byte[] answer(byte[] request) {
        int unit = request[0] & 0xFF;
        int first = ModbusFrames.word(request, 2);
        int count = ModbusFrames.word(request, 4);
        int[] body = new int[3 + 2 * count];
        body[0] = unit;
        body[1] = request[1];
        body[2] = 2 * count;
        for (int i = 0; i < count; i++) {
            int value = unit * 1000 + first + i;
            body[3 + 2 * i] = value >> 8;
            body[4 + 2 * i] = value;
        }
        return ModbusFrames.sealed(body);
    }

    static byte[] cat(byte[] one, byte[] two) {
        byte[] all = Arrays.copyOf(one, one.length + two.length);
        System.arraycopy(two, 0, all, one.length, two.length);
        return all;
    }
}
