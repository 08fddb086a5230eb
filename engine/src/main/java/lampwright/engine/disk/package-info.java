/** Files that are read bounded, and written whole or not at all. */
@NullMarked
package lampwright.engine.disk;

import org.jspecify.annotations.NullMarked;
