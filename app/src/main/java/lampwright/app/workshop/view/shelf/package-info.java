/** The patterns shelf on the screen. */
@NullMarked
package lampwright.app.workshop.view.shelf;

import org.jspecify.annotations.NullMarked;
