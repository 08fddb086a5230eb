/**
 * A model of the RP2040: core, bus, clocks, timer, PIO, DMA, PWM and pins. It faults on whatever it
 * does not know.
 */
@NullMarked
package lampwright.exporters.proof.rp2040;

import org.jspecify.annotations.NullMarked;
