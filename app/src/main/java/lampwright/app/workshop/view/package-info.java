/** The workshop on the screen: binds and draws what the models say. */
@NullMarked
package lampwright.app.workshop.view;

import org.jspecify.annotations.NullMarked;
