/** Packs frame tables into small programs of light, one a lamp, and reads them back. */
@NullMarked
package lampwright.exporters.packed;

import org.jspecify.annotations.NullMarked;
