package settlemark.session;

import settlemark.measure.Chunk;

/** Hears what a link hears. Called from the link's own thread; must return at once. */
public interface LinkListener {
    void arrived(Chunk chunk);

    /** @param words what happened, in a sentence that a technician understands */
    void changed(long timeNanos, LinkChange change, String words);
}
