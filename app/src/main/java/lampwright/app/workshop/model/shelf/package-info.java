/** The patterns shelf: patterns and presets, to be placed on lamps. */
@NullMarked
package lampwright.app.workshop.model.shelf;

import org.jspecify.annotations.NullMarked;
