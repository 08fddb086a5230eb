/**
 * Situations of the model, the conditions that bring them about, and the machine that runs them.
 */
@NullMarked
package lampwright.engine.situation;

import org.jspecify.annotations.NullMarked;
