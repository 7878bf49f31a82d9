/**
 * YAML and JSON text to a tree that knows its lines and columns, checked by a JSON Schema; all problems
 * at once. Never reads a file and never knows what the document is about.
 */
@NullMarked
package settlemark.document;

import org.jspecify.annotations.NullMarked;
