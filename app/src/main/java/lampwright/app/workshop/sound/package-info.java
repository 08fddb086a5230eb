/** Sound files read, bounded, and played; knows no toolkit. */
@NullMarked
package lampwright.app.workshop.sound;

import org.jspecify.annotations.NullMarked;
