/** Where the program starts. */
@NullMarked
package lampwright.app;

import org.jspecify.annotations.NullMarked;
