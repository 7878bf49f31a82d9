/**
 * The live pipeline from chunks to readings, its replay, and the ports through which the outside is
 * reached. The same events in give the same readings out, at any speed and however the bytes were cut. One writer:
 * nothing here is shared between threads except the immutable snapshot.
 */
@NullMarked
package settlemark.session;

import org.jspecify.annotations.NullMarked;
