/** Tests of the byte layout of packed light against docs/packed.md. */
@NullMarked
package lampwright.exporters.packed.format;

import org.jspecify.annotations.NullMarked;
