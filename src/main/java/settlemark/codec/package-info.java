/**
 * Samples and their statistics as checked bytes and back, each double bit for bit. Every column has its own digest, so
 * that damage in one costs nothing else. No input or output, no SQL.
 */
@NullMarked
package settlemark.codec;

import org.jspecify.annotations.NullMarked;
