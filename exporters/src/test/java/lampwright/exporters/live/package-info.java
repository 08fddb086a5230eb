@NullMarked
package lampwright.exporters.live;

import org.jspecify.annotations.NullMarked;
