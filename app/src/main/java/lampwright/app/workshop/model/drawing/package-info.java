/** The drawing of the model: where its lamps stand, and how they glow. */
@NullMarked
package lampwright.app.workshop.model.drawing;

import org.jspecify.annotations.NullMarked;
