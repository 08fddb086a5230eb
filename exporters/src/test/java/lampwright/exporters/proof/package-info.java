@NullMarked
package lampwright.exporters.proof;

import org.jspecify.annotations.NullMarked;
