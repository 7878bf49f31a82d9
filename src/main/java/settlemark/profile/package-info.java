/**
 * A device profile: what a gauge's bytes mean, read from its document with all its problems at once.
 * Never decodes a byte and never opens a file.
 */
@NullMarked
package settlemark.profile;

import org.jspecify.annotations.NullMarked;
