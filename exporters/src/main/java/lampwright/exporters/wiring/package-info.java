/** The parts between supply, controller and light, as rig and findings ask for them. */
@NullMarked
package lampwright.exporters.wiring;

import org.jspecify.annotations.NullMarked;
