/** The rig editor on the screen. */
@NullMarked
package lampwright.app.workshop.view.rig;

import org.jspecify.annotations.NullMarked;
