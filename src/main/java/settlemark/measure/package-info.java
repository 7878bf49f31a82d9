/**
 * Units by UCUM code, quantities with their uncertainty, channels, samples and the chunks of bytes they
 * come from. Never does input or output, never reads a clock, never knows a device or a job.
 */
@NullMarked
package settlemark.measure;

import org.jspecify.annotations.NullMarked;
