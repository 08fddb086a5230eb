/** Drawings as lists of marks, without a toolkit, and what writes them to files. */
@NullMarked
package lampwright.exporters.picture;

import org.jspecify.annotations.NullMarked;
