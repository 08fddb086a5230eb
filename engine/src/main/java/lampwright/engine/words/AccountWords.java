package lampwright.engine.words;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.render.PixelAccount;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/** Why a pixel shows what it shows, step by step, from the account of the renderer. */
public final class AccountWords {
  private static final MathContext DIGITS = new MathContext(4);
  private static final TextBundle TEXTS =
      TextBundle.of(
          ResourceBundle.getBundle(
              "lampwright.engine.words.account", Locale.ROOT, AccountWords.class.getModule()));

  private final Rig rig;
  private final Scene scene;
  private final Lamp lamp;
  private final PixelAccount account;

  private AccountWords(Rig rig, Scene scene, Lamp lamp, PixelAccount account) {
    this.rig = rig;
    this.scene = scene;
    this.lamp = lamp;
    this.account = account;
  }

  /**
   * The steps from the lowest cue to the bytes, a line each; what belongs to a cue is indented by
   * two spaces.
   */
  public static List<String> lines(Rig rig, Scene scene, Lamp lamp, PixelAccount account) {
    return new AccountWords(rig, scene, lamp, account).lines();
  }

  /** The bytes with their emitters, {@code G 12, R 200, B 0}. */
  public static String bytes(PixelAccount account) {
    return account.bytes().stream()
        .map(step -> letter(step) + step.duty())
        .collect(Collectors.joining(", "));
  }

  private List<String> lines() {
    List<String> lines = new ArrayList<>();
    if (account.layers().isEmpty()) {
      lines.add(TEXTS.get("none"));
    }
    account.layers().forEach(layer -> layer(layer, lines));
    lamp.feel().ifPresent(feel -> feel(feel, lines));
    caps(lines);
    for (PixelAccount.ByteStep step : account.bytes()) {
      lines.add(
          TEXTS.get(
              step.carried() == 0 ? "byte" : "byte.dithered",
              step.emitter().map(emitter -> " " + emitter.letter()).orElse(""),
              number(step.capped()),
              number(255 * step.capped() + step.carried()),
              Integer.toString(step.duty()),
              number(step.carried())));
    }
    return lines;
  }

  private void layer(PixelAccount.Layer layer, List<String> lines) {
    Cue cue = scene.tracks().get(layer.track()).cues().get(layer.cue());
    Pattern pattern = cue.pattern();
    lines.add(
        TEXTS.get(
            "cue",
            Integer.toString(layer.track() + 1),
            Integer.toString(layer.cue() + 1),
            new CueWords().of(pattern),
            seconds(cue.startMs()),
            seconds(cue.endMs()),
            number(layer.sinceStartMs())));
    if (layer.isHidden()) {
      lines.add("  " + TEXTS.get("hidden"));
      return;
    }
    layer
        .period()
        .ifPresent(
            place ->
                lines.add(
                    "  " + TEXTS.get("period", number(place.periodMs()), number(place.atMs()))));
    if (pattern.colours().containsKey("colour")) {
      lines.add(
          "  "
              + TEXTS.get(
                  "colour", ColourWords.of(pattern.look().colour()), drives(layer.fullColour())));
    }
    lines.add(
        "  "
            + TEXTS.get(
                "level",
                number(100 * pattern.look().level()),
                curve(rig.curve()),
                number(layer.levelLight())));
    lines.add("  " + TEXTS.get("paints", drives(layer.painted())));
    if (layer.faded() != 1) {
      lines.add("  " + TEXTS.get("fade", number(100 * layer.faded()), number(layer.a())));
    }
    lines.add(
        "  " + TEXTS.get("blend." + cue.blend().key(), change(layer.under(), layer.result())));
  }

  private void feel(Feel feel, List<String> lines) {
    lines.add(
        TEXTS.get(
            "feel",
            number(feel.riseMs()),
            number(feel.fallMs()),
            change(
                account.bytes().stream().map(PixelAccount.ByteStep::mixed).toList(),
                account.bytes().stream().map(PixelAccount.ByteStep::felt).toList())));
  }

  private void caps(List<String> lines) {
    lines.add(
        TEXTS.get(
            "caps",
            number(100 * account.brightnessCap()),
            number(100 * account.sceneFactor()),
            number(100 * account.frameFactor())));
  }

  private String change(List<Double> from, List<Double> to) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < to.size(); i++) {
      words.add(
          letter(account.bytes().get(i)) + number(from.get(i)) + " \u2192 " + number(to.get(i)));
    }
    return String.join(", ", words);
  }

  private String drives(List<Double> drives) {
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < drives.size(); i++) {
      words
          .append(i == 0 ? "" : ", ")
          .append(letter(account.bytes().get(i)))
          .append(number(drives.get(i)));
    }
    return words.toString();
  }

  private static String letter(PixelAccount.ByteStep step) {
    return step.emitter().map(emitter -> emitter.letter() + " ").orElse("");
  }

  private static String curve(Curve curve) {
    if (curve instanceof Curve.Power power) {
      return TEXTS.get("curve.power", number(power.gamma()));
    } else if (curve instanceof Curve.Srgb) {
      return TEXTS.get("curve.srgb");
    } else if (curve instanceof Curve.CieLightness) {
      return TEXTS.get("curve.cie");
    }
    return TEXTS.get("curve.linear");
  }

  private static String seconds(BigDecimal ms) {
    return number(ms.movePointLeft(3).doubleValue());
  }

  private static String number(double value) {
    BigDecimal rounded = new BigDecimal(value).round(DIGITS);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
