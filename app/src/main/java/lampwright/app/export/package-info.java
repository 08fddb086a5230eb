/** One run of an export: what it will write and whether it fits, and the writing itself. */
@NullMarked
package lampwright.app.export;

import org.jspecify.annotations.NullMarked;
