/** The frame table itself: C source, bare bytes, Intel HEX and rows of numbers. */
@NullMarked
package lampwright.exporters.table;

import org.jspecify.annotations.NullMarked;
