/** The command line. */
@NullMarked
package lampwright.app.command;

import org.jspecify.annotations.NullMarked;
