/** The file of the project on the bench: opening, saving, keeping safe, noticing what others do. */
@NullMarked
package lampwright.app.workshop.model.files;

import org.jspecify.annotations.NullMarked;
