/**
 * Runs an exported image on a model of its controller, and compares its pins with the frame table.
 */
@NullMarked
package lampwright.exporters.proof;

import org.jspecify.annotations.NullMarked;
