/** What is fitted to the model: chains, pixel types, driver outputs and lamps. */
@NullMarked
package lampwright.engine.rig;

import org.jspecify.annotations.NullMarked;
