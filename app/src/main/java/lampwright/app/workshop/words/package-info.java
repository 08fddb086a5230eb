/** The workshop's texts. */
@NullMarked
package lampwright.app.workshop.words;

import org.jspecify.annotations.NullMarked;
