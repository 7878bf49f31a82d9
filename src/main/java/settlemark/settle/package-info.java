/**
 * Decides when a reading has settled, from the past alone, and says why in one line. Never knows a unit, a
 * device or a job: plain numbers in, events out.
 */
@NullMarked
package settlemark.settle;

import org.jspecify.annotations.NullMarked;
