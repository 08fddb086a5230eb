/** Packs frame tables into small programs of light, one a lamp, and proves them by decoding. */
@NullMarked
package lampwright.exporters.packed.encode;

import org.jspecify.annotations.NullMarked;
