/** The export on the screen. */
@NullMarked
package lampwright.app.workshop.view.export;

import org.jspecify.annotations.NullMarked;
