/** What can be done to a project: pure functions from one value to the next. */
@NullMarked
package lampwright.app.workshop.edit;

import org.jspecify.annotations.NullMarked;
