/** Forms: the values of a record, each with the control of its kind. */
@NullMarked
package lampwright.app.workshop.view.form;

import org.jspecify.annotations.NullMarked;
