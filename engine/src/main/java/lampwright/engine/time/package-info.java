/** Exact time. */
@NullMarked
package lampwright.engine.time;

import org.jspecify.annotations.NullMarked;
