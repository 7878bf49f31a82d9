/**
 * What makes a session provable later: digests of all its parts in one hash tree, signed with the workspace's key, and
 * the check that says which part is no longer what was sealed.
 */
@NullMarked
package settlemark.seal;

import org.jspecify.annotations.NullMarked;
