/** The folder that a microcontroller plays: packed scenes, player, wire driver and examples. */
@NullMarked
package lampwright.exporters.firmware;

import org.jspecify.annotations.NullMarked;
