/** The frame clock, the renderer and the frame table. */
@NullMarked
package lampwright.engine.render;

import org.jspecify.annotations.NullMarked;
