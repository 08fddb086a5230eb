/**
 * What the hardware and the eye will feel: current, voltage, wire time, memory, flashes, colours.
 */
@NullMarked
package lampwright.engine.meter;

import org.jspecify.annotations.NullMarked;
