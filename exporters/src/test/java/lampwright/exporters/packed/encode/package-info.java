/** Tests of the packer. */
@NullMarked
package lampwright.exporters.packed.encode;

import org.jspecify.annotations.NullMarked;
