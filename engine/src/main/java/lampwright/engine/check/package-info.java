/**
 * Values that check themselves: faults with the field that they are in, and text that is fit to be
 * shown.
 */
@NullMarked
package lampwright.engine.check;

import org.jspecify.annotations.NullMarked;
