/** The situations of a model: their ladder, and the transmitter by which they are tried. */
@NullMarked
package lampwright.app.workshop.model.situation;

import org.jspecify.annotations.NullMarked;
