/**
 * A simulated appliance and the instruments on it, which speak real bytes, for demonstration, training and
 * tests. Whatever comes from here is marked as simulated.
 */
@NullMarked
package settlemark.rig;

import org.jspecify.annotations.NullMarked;
