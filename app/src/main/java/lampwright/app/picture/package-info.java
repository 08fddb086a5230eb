/** Drawings as lists of shapes, without a toolkit, and what writes them to files. */
@NullMarked
package lampwright.app.picture;

import org.jspecify.annotations.NullMarked;
