package lampwright.app.workshop.model.command;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * All commands, in the order of the menus.
 *
 * @param all no two with one id or one shortcut
 */
public record Commands(List<Command> all) {
  /**
   * @throws IllegalArgumentException if two commands have one id or one shortcut
   */
  public Commands {
    all = List.copyOf(all);
    Set<String> taken = new HashSet<>();
    for (Command command : all) {
      if (!taken.add(command.id())) {
        throw new IllegalArgumentException("two commands have the id " + command.id());
      }
      if (!command.shortcut().isEmpty() && !taken.add(command.shortcut())) {
        throw new IllegalArgumentException("two commands have the keys " + command.shortcut());
      }
    }
  }

  /**
   * The command with an id.
   *
   * @throws IllegalArgumentException if there is none
   */
  public Command find(String id) {
    return all.stream()
        .filter(command -> command.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no command has the id " + id));
  }

  /** The groups of a menu, by their numbers. */
  public List<List<Command>> groups(CommandMenu menu) {
    Map<Integer, List<Command>> groups = new TreeMap<>();
    for (Command command : all) {
      if (command.place() instanceof Command.InMenu in && in.menu() == menu) {
        groups.computeIfAbsent(in.group(), group -> new ArrayList<>()).add(command);
      }
    }
    return List.copyOf(groups.values());
  }
}
