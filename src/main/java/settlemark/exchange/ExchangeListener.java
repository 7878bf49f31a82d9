package settlemark.exchange;

import settlemark.measure.Chunk;

/** Hears what becomes of the questions to one device. Times are those that were handed in. */
public interface ExchangeListener {
    /** The bytes of a good answer with the input of its message, bytes that came unasked, or stray ones. */
    void arrived(Chunk chunk);

    /** The device does not answer or did not start; said once until it is back. */
    void lost(long timeNanos, String words);

    /** It answers again. */
    void back(long timeNanos, String words);

    /** Something worth knowing that ends nothing. */
    void noted(long timeNanos, String words);
}
