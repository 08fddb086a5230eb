/** The workshop: where light is composed on the model and seen as it will be. */
@NullMarked
package lampwright.app.workshop;

import org.jspecify.annotations.NullMarked;
