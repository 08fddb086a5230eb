/** The document, JSON in and out, and the problems found in it. */
@NullMarked
package lampwright.engine.project;

import org.jspecify.annotations.NullMarked;
