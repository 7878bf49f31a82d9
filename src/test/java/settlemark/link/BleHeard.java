package settlemark.link;

import java.util.ArrayList;
import java.util.List;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkListener;

/** Remembers the chunks and changes of a link in their order. */
final class BleHeard implements LinkListener {
    private final List<Chunk> chunks = new ArrayList<>();
    private final List<LinkChange> changes = new ArrayList<>();
    private final List<String> words = new ArrayList<>();
    private long lastNanos = Long.MIN_VALUE;
    private boolean timeWentBack;

    @Override
    public synchronized void arrived(Chunk chunk) {
        timeWentBack |= chunk.timeNanos() < lastNanos;
        lastNanos = chunk.timeNanos();
        chunks.add(chunk);
    }

    @Override
    public synchronized void changed(long timeNanos, LinkChange change, String sentence) {
        changes.add(change);
        words.add(sentence);
    }

    synchronized List<Chunk> chunks() {
        return List.copyOf(chunks);
    }

    synchronized int count() {
        return chunks.size();
    }

    synchronized long count(int input) {
        return chunks.stream().filter(c -> c.input() == input).count();
    }

    /** Values of an input, the first four bytes as a number, low byte first. */
    synchronized List<Integer> numbers(int input) {
        return chunks.stream()
                .filter(c -> c.input() == input)
                .map(c -> number(c.bytes()))
                .toList();
    }

    static int number(byte[] bytes) {
        int number = 0;
        for (int i = Math.min(4, bytes.length) - 1; i >= 0; i--) {
            number = number << 8 | bytes[i] & 0xFF;
        }
        return number;
    }

    static byte[] bytes(int number) {
        return new byte[] {(byte) number, (byte) (number >> 8), (byte) (number >> 16), (byte) (number >> 24)};
    }

    synchronized List<LinkChange> changes() {
        return List.copyOf(changes);
    }

    synchronized long count(LinkChange change) {
        return changes.stream().filter(c -> c == change).count();
    }

    synchronized List<String> words() {
        return List.copyOf(words);
    }

    synchronized boolean said(String part) {
        return words.stream().anyMatch(w -> w.contains(part));
    }

    synchronized boolean timeWentBack() {
        return timeWentBack;
    }
}
