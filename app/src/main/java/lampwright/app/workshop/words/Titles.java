package lampwright.app.workshop.words;

import lampwright.engine.check.SafeText;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;

/** Names of a project as the window shows them, in one line. */
public final class Titles {
  private static final int MAX = 200;

  private Titles() {}

  /**
   * What a lamp is called. A name may hold whatever a file can: nothing in it breaks the line,
   * turns the direction of writing or hides.
   */
  public static String of(Lamp lamp) {
    return SafeText.text(lamp.title(), MAX);
  }

  /** A function of lamps as people call it. */
  public static String of(LampFunction function) {
    return Texts.of("settings").get("function." + function.key());
  }

  /** A kind of pattern as people call it. */
  public static String ofKind(String kind) {
    return Texts.of("settings").get("kind." + kind);
  }
}
