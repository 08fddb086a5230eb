/** The guide sound of the scene on the bench: what is read of it, and when it is played. */
@NullMarked
package lampwright.app.workshop.model.sound;

import org.jspecify.annotations.NullMarked;
