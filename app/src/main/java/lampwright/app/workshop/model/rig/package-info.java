/** The rig editor: the parts of the model's wiring and their values. */
@NullMarked
package lampwright.app.workshop.model.rig;

import org.jspecify.annotations.NullMarked;
