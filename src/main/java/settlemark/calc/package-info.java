/**
 * Gas-side and air-side results, each with its uncertainty, its formula's source and validity. Pure functions.
 */
@NullMarked
package settlemark.calc;

import org.jspecify.annotations.NullMarked;
