/** What is in a project, in words for people: for the sheet, explanations and the window alike. */
@NullMarked
package lampwright.engine.words;

import org.jspecify.annotations.NullMarked;
