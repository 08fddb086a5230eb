/** Makes the build sheet of a project and writes it as HTML or PDF. */
@NullMarked
package lampwright.app.sheet;

import org.jspecify.annotations.NullMarked;
