/** Every finding about a project, made in one place and shown by all that show findings. */
@NullMarked
package lampwright.engine.review;

import org.jspecify.annotations.NullMarked;
