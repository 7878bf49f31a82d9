/** Benchmarks: what the program does in a second, beside what the same work takes when it is written by hand. */
@NullMarked
package settlemark.benchmark;

import org.jspecify.annotations.NullMarked;
