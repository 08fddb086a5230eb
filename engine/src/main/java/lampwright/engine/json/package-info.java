/** The project in and out of JSON, and the problems found in a file. */
@NullMarked
package lampwright.engine.json;

import org.jspecify.annotations.NullMarked;
