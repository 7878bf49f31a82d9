/**
 * The record of a job: PDF for people, CSV for machines. Made again from the same session it is the same
 * byte for byte.
 */
@NullMarked
package settlemark.record;

import org.jspecify.annotations.NullMarked;
