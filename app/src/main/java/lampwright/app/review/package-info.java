/** All findings about a project: those of the engine and those of the controller together. */
@NullMarked
package lampwright.app.review;

import org.jspecify.annotations.NullMarked;
