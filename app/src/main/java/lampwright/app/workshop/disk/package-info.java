/** What the workshop keeps on the disk besides projects, without a toolkit; may block. */
@NullMarked
package lampwright.app.workshop.disk;

import org.jspecify.annotations.NullMarked;
