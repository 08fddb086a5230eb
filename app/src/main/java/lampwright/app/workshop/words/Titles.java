package lampwright.app.workshop.words;

import java.util.Locale;
import lampwright.engine.check.SafeText;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.words.CueWords;

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

  /**
   * What a chain is called, in the words of a part of the window. An id such as {@code chain-1}
   * needs no word before it.
   */
  public static String ofChain(String id, Texts texts) {
    return id.toLowerCase(Locale.ROOT).startsWith("chain")
        ? SafeText.text(id, MAX)
        : texts.get("chain", id);
  }

  /** A function of lamps as people call it. */
  public static String of(LampFunction function) {
    return Texts.of("settings").get("function." + function.key());
  }

  /** A kind of pattern as people call it. */
  public static String ofKind(String kind) {
    return CueWords.kind(kind);
  }
}
