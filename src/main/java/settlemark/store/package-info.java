/**
 * The workspace: one SQLite file with every byte, sample, act and reading. Commits are durable; damage is
 * reported, never skipped in silence.
 */
@NullMarked
package settlemark.store;

import org.jspecify.annotations.NullMarked;
