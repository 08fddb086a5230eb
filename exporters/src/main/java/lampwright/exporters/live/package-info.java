/** What host and controller agree on for the bench link: docs/live.md. */
@NullMarked
package lampwright.exporters.live;

import org.jspecify.annotations.NullMarked;
