/** Help in the window: keys, pages and the tour. */
@NullMarked
package lampwright.app.workshop.view.help;

import org.jspecify.annotations.NullMarked;
