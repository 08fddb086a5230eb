/** Colours, curves, chromaticity and the mixing of emitters. */
@NullMarked
package lampwright.engine.light;

import org.jspecify.annotations.NullMarked;
