/** Playing a scene on the screen. */
@NullMarked
package lampwright.app.workshop.model.play;

import org.jspecify.annotations.NullMarked;
