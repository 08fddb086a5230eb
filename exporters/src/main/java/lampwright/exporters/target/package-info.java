/**
 * One class per controller: pins, timers, what its line driver really sends, memory, cautions, and
 * how it is built and proved.
 */
@NullMarked
package lampwright.exporters.target;

import org.jspecify.annotations.NullMarked;
