/** Work in the background, where the latest request wins. */
@NullMarked
package lampwright.engine.work;

import org.jspecify.annotations.NullMarked;
