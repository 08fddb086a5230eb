/** What an export will write, what it asks of the controller, and how it goes on. */
@NullMarked
package lampwright.app.workshop.model.export;

import org.jspecify.annotations.NullMarked;
