/**
 * Rating plate, plans, steps, as-found and as-left readings, decision rule and verdict: what the technician
 * does, in order. Never reads a clock: every act carries its time.
 */
@NullMarked
package settlemark.job;

import org.jspecify.annotations.NullMarked;
