package settlemark.app;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkListener;

/**
 * Keeps what a link says until the session runs, and says link changes to the person. Links are opened before their
 * session, so that a port that cannot be opened leaves no empty session behind.
 */
final class LateListener implements LinkListener {
    private final String name;
    private final Consumer<String> said;
    private final List<Consumer<LinkListener>> early = new ArrayList<>();
    private @Nullable LinkListener onward;

    /** @param said hears each change that a person should know of */
    LateListener(String name, Consumer<String> said) {
        this.name = name;
        this.said = said;
    }

    synchronized void connect(LinkListener listener) {
        onward = listener;
        early.forEach(e -> e.accept(listener));
        early.clear();
    }

    @Override
    public synchronized void arrived(Chunk chunk) {
        if (onward == null) {
            early.add(listener -> listener.arrived(chunk));
        } else {
            onward.arrived(chunk);
        }
    }

    @Override
    public synchronized void changed(long timeNanos, LinkChange change, String words) {
        if (change != LinkChange.UP && change != LinkChange.ENDED) {
            said.accept(name + ": " + words);
        }
        if (onward != null) {
            onward.changed(timeNanos, change, words);
        } else if (change != LinkChange.UP) {
            // A session takes its links for up at its start.
            early.add(listener -> listener.changed(timeNanos, change, words));
        }
    }
}
