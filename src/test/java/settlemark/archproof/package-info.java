/** Classes that break the architecture on purpose, so that its test is seen to bite. */
@NullMarked
package settlemark.archproof;

import org.jspecify.annotations.NullMarked;
