/** The ribbons: time, rows, cues as handles, and the strips of light under them. */
@NullMarked
package lampwright.app.workshop.model.ribbon;

import org.jspecify.annotations.NullMarked;
