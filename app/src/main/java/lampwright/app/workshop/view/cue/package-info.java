/** The settings of cues on the screen. */
@NullMarked
package lampwright.app.workshop.view.cue;

import org.jspecify.annotations.NullMarked;
