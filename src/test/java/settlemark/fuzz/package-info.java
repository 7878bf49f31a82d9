/**
 * Fuzz tests: one class a target, named {@code ...FuzzTest}, with one {@code @FuzzTest} method that takes bytes. In a
 * build each runs once over its seeds; {@code mvn -Pfuzz -Dtest=...} looks for bytes that break it. A new target is
 * found by its name, so that adding the class is all there is to do.
 *
 * <p>Seeds come from a {@code @MethodSource} above {@code @FuzzTest}, made from what is shipped, so that they never go
 * stale; and from files below {@code src/test/resources/settlemark/fuzz/<class>Inputs/<method>/}, where each finding is
 * kept for good.
 */
@NullMarked
package settlemark.fuzz;

import org.jspecify.annotations.NullMarked;
