/** What the hardware and the eye feel of a scene, measured and held against limits. */
@NullMarked
package lampwright.engine.meter;

import org.jspecify.annotations.NullMarked;
