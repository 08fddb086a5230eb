/** What makes the next start of the program shorter: the archives of loaded classes. */
@NullMarked
package lampwright.app.startup;

import org.jspecify.annotations.NullMarked;
