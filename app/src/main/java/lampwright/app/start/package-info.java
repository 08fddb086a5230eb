/** New models: from a kind of model, the lamps that it has and a controller to a whole project. */
@NullMarked
package lampwright.app.start;

import org.jspecify.annotations.NullMarked;
