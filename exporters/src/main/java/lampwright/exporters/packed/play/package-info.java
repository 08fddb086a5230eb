/** Plays packed data as the C player does. */
@NullMarked
package lampwright.exporters.packed.play;

import org.jspecify.annotations.NullMarked;
