/** Drawings painted into images. */
@NullMarked
package lampwright.app.picture;

import org.jspecify.annotations.NullMarked;
