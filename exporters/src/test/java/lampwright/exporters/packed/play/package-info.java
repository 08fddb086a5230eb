/** Tests of the player, in Java and in C. */
@NullMarked
package lampwright.exporters.packed.play;

import org.jspecify.annotations.NullMarked;
