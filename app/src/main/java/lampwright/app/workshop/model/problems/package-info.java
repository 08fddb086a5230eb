/** What is wrong with the project on the bench, and where. */
@NullMarked
package lampwright.app.workshop.model.problems;

import org.jspecify.annotations.NullMarked;
