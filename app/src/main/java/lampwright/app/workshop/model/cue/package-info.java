/** The settings of the selected cues. */
@NullMarked
package lampwright.app.workshop.model.cue;

import org.jspecify.annotations.NullMarked;
