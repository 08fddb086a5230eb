/** What every export format has in common: the job, where files go, and what is reported. */
@NullMarked
package lampwright.exporters;

import org.jspecify.annotations.NullMarked;
