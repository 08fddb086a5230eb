/** The start sheet: new models, last files and samples. */
@NullMarked
package lampwright.app.workshop.model.start;

import org.jspecify.annotations.NullMarked;
