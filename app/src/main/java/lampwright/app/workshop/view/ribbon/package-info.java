/** The ribbons on the screen. */
@NullMarked
package lampwright.app.workshop.view.ribbon;

import org.jspecify.annotations.NullMarked;
