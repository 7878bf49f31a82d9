package settlemark.store;

import settlemark.session.Span;

/**
 * Where a sealed block lies, and what its row says of it.
 *
 * @param id of its row
 * @param key number of the session, or id of the rereading
 * @param probe whose samples it holds
 * @param number within the probe
 * @param span of its samples
 */
record BlockPlace(long id, long key, int probe, long number, Span span) {}
