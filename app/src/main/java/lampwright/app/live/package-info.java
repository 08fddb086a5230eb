/** Frames to real lamps while a project is worked on: a serial link, and ANSI E1.31. */
@NullMarked
package lampwright.app.live;

import org.jspecify.annotations.NullMarked;
