/** The start sheet on the screen. */
@NullMarked
package lampwright.app.workshop.view.start;

import org.jspecify.annotations.NullMarked;
