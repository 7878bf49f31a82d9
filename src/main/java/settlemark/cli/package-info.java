/**
 * The commands. Data on stdout, messages on stderr, exit codes that scripts can rely on.
 */
@NullMarked
package settlemark.cli;

import org.jspecify.annotations.NullMarked;
