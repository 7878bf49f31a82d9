/**
 * The desktop: one window, one strip, one column open. Reads snapshots and sends acts; never waits for
 * anything on the event thread.
 */
@NullMarked
package settlemark.ui;

import org.jspecify.annotations.NullMarked;
