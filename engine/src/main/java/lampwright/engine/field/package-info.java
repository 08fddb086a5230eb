/**
 * What a record of the project file is made of: the name, type, unit, range and default of each
 * field.
 */
@NullMarked
package lampwright.engine.field;

import org.jspecify.annotations.NullMarked;
