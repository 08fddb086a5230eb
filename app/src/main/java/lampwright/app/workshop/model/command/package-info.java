/** What the builder can do, told once for menus, keys and help. */
@NullMarked
package lampwright.app.workshop.model.command;

import org.jspecify.annotations.NullMarked;
