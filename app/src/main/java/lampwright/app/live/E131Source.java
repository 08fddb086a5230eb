package lampwright.app.live;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import lampwright.engine.check.Checks;
import lampwright.engine.check.SafeText;

/**
 * Who sends.
 *
 * @param id the component identifier (CID), the same for as long as the program is this user's
 * @param name for people, to {@link #NAME_BYTES} bytes of UTF-8
 * @param priority 0 to 200; of two who send one universe a receiver takes the higher
 */
public record E131Source(UUID id, String name, int priority) {
  /** The field has 64 with the null that ends it (ANSI E1.31-2018, 6.2.2). */
  static final int NAME_BYTES = 63;

  public static final int MOST_PRIORITY = 200;
  public static final int USUAL_PRIORITY = 100;

  private static final String UNNAMED = "Lampwright";

  public E131Source {
    Checks.require("priority", priority, 0, MOST_PRIORITY);
    Checks.require("name", name.getBytes(StandardCharsets.UTF_8).length, 0, NAME_BYTES);
  }

  /** Who sends a project: its name without what is no plain character, cut where it is too long. */
  public static E131Source of(UUID id, String project, int priority) {
    StringBuilder name = new StringBuilder();
    int bytes = 0;
    for (int c : project.strip().codePoints().filter(SafeText::plain).toArray()) {
      String character = Character.toString(c);
      bytes += character.getBytes(StandardCharsets.UTF_8).length;
      if (bytes > NAME_BYTES) {
        break;
      }
      name.append(character);
    }
    return new E131Source(id, name.isEmpty() ? UNNAMED : name.toString(), priority);
  }
}
