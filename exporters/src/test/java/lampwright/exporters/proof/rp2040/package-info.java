@NullMarked
package lampwright.exporters.proof.rp2040;

import org.jspecify.annotations.NullMarked;
