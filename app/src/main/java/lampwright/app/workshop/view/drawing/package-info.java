/** The drawing of the model on the screen. */
@NullMarked
package lampwright.app.workshop.view.drawing;

import org.jspecify.annotations.NullMarked;
