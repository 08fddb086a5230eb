/** The project as a value, and what can be wrong between its parts. */
@NullMarked
package lampwright.engine.document;

import org.jspecify.annotations.NullMarked;
