/** The drawings of the models, side by side, and the lamps that each kind usually has. */
@NullMarked
package lampwright.app.outline;

import org.jspecify.annotations.NullMarked;
