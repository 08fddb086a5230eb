package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.LampSigns.Sign;
import lampwright.app.workshop.words.Texts;

/** Where the signs of lamps are in the titles, and what they say. */
public final class RibbonSigns {
  private RibbonSigns() {}

  /** The sign at a distance from the left in titles of a width. */
  public static Optional<Sign> at(double x, double width) {
    return TitleDrawing.signAt(x, width);
  }

  /** The signs of a lamp in words, such as {@code muted, locked}; empty if it has none. */
  public static String words(LampSigns signs, String lamp) {
    Texts texts = Texts.of("ribbons");
    List<String> words = new ArrayList<>();
    if (signs.has(Sign.MUTE, lamp)) {
      words.add(texts.get("sign.muted"));
    }
    if (signs.has(Sign.SOLO, lamp)) {
      words.add(texts.get("sign.soloed"));
    }
    if (signs.has(Sign.LOCK, lamp)) {
      words.add(texts.get("sign.locked"));
    }
    return String.join(", ", words);
  }
}
