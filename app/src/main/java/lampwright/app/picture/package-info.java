/**
 * Models with their light, and drawings painted into images; without a screen or a toolkit of
 * windows.
 */
@NullMarked
package lampwright.app.picture;

import org.jspecify.annotations.NullMarked;
