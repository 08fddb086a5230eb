/** The patterns, one class each, and the exact time that they run on. */
@NullMarked
package lampwright.engine.pattern;

import org.jspecify.annotations.NullMarked;
