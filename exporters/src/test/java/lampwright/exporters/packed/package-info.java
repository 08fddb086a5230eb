/** Tests of packed light, and the corpus they share. */
@NullMarked
package lampwright.exporters.packed;

import org.jspecify.annotations.NullMarked;
