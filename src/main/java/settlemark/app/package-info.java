/**
 * Main and the wiring. The only maker of threads and the only reader of clocks.
 */
@NullMarked
package settlemark.app;

import org.jspecify.annotations.NullMarked;
