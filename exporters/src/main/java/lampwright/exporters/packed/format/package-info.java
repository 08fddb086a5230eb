/** The byte layout of packed data, which encoder and player share. */
@NullMarked
package lampwright.exporters.packed.format;

import org.jspecify.annotations.NullMarked;
