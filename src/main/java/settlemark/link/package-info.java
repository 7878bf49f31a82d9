/**
 * Real links: serial ports and Bluetooth probes, and the other end of each. Delivers chunks of bytes, never samples. Makes
 * no thread of its own: the factory is given by whoever opens.
 */
@NullMarked
package settlemark.link;

import org.jspecify.annotations.NullMarked;
