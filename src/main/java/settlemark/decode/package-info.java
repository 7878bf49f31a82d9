/**
 * Bytes to frames to samples, driven by a profile, and the encoder back. Garbage is a value here, never an
 * exception. Never reads a clock: time comes with the bytes.
 */
@NullMarked
package settlemark.decode;

import org.jspecify.annotations.NullMarked;
