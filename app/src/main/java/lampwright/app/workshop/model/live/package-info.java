/**
 * The bench link as the workshop has it: what it shows on real lamps, and what is found out by it.
 */
@NullMarked
package lampwright.app.workshop.model.live;

import org.jspecify.annotations.NullMarked;
