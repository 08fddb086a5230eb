/** Scenes, tracks, cues and the way cues blend. */
@NullMarked
package lampwright.engine.scene;

import org.jspecify.annotations.NullMarked;
