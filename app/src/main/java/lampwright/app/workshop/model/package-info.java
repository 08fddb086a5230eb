/** What the workshop shows and allows, without a control or a window. */
@NullMarked
package lampwright.app.workshop.model;

import org.jspecify.annotations.NullMarked;
