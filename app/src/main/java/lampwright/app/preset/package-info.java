/** The presets that come with the program, from a data file. */
@NullMarked
package lampwright.app.preset;

import org.jspecify.annotations.NullMarked;
