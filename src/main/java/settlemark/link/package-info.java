/**
 * Real links: serial ports, and the other end of each. Delivers chunks of bytes, never samples.
 */
@NullMarked
package settlemark.link;

import org.jspecify.annotations.NullMarked;
