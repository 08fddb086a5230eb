/** The sheet of the chosen cues. */
@NullMarked
package lampwright.app.workshop.model.cue;

import org.jspecify.annotations.NullMarked;
