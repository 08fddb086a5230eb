/** The panel with the situations and the stand-in transmitter. */
@NullMarked
package lampwright.app.workshop.view.situation;

import org.jspecify.annotations.NullMarked;
