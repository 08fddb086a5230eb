/** The documentation that the program carries with it. */
@NullMarked
package lampwright.app.help;

import org.jspecify.annotations.NullMarked;
