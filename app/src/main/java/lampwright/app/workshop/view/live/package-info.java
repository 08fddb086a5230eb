/** The panel of the bench link. */
@NullMarked
package lampwright.app.workshop.view.live;

import org.jspecify.annotations.NullMarked;
