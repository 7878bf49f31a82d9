package settlemark.link;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkListener;

/** Remembers what a link said, each change with the session time, in order. */
final class Heard implements LinkListener {
    private final List<LinkChange> changes = new ArrayList<>();
    private final List<String> words = new ArrayList<>();
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private long lastNanos = Long.MIN_VALUE;
    private boolean timeWentBack;

    @Override
    public synchronized void arrived(Chunk chunk) {
        stamp(chunk.timeNanos());
        bytes.writeBytes(chunk.bytes());
    }

    @Override
    public synchronized void changed(long timeNanos, LinkChange change, String sentence) {
        stamp(timeNanos);
        changes.add(change);
        words.add(sentence);
    }

    private void stamp(long nanos) {
        timeWentBack |= nanos < lastNanos;
        lastNanos = nanos;
    }

    synchronized List<LinkChange> changes() {
        return List.copyOf(changes);
    }

    synchronized boolean has(LinkChange change) {
        return changes.contains(change);
    }

    synchronized String lastWords() {
        return words.isEmpty() ? "" : words.get(words.size() - 1);
    }

    synchronized int count() {
        return bytes.size();
    }

    synchronized byte[] bytes() {
        return bytes.toByteArray();
    }

    synchronized boolean timeWentBack() {
        return timeWentBack;
    }
}
