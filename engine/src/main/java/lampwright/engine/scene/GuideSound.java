package lampwright.engine.scene;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.InnerPath;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.pattern.Times;

/**
 * A sound that the workshop plays beside a scene, for the builder to set cues by. It lights nothing
 * and is part of no export.
 *
 * @param file where it is, from the project's folder and not outside it, with {@code /} between
 *     folders
 * @param startMs when in the scene it begins, from a day before its start to a day after; below 0
 *     its beginning is left out
 */
public record GuideSound(String file, BigDecimal startMs) {
  private static final InnerPath PATH =
      new InnerPath(
          "sound", List.of(".wav", ".aif", ".aiff"), List.of("guide.wav", "sounds/engine.aiff"));

  public static final Field<GuideSound, String> FILE =
      Field.required("file", PATH.type(), GuideSound::file, "");
  public static final Field<GuideSound, BigDecimal> START_MS =
      Field.usual(
          "startMs",
          new DecimalType(Unit.MILLISECONDS, -Times.MAX_MS, Times.MAX_MS),
          GuideSound::startMs,
          BigDecimal.ZERO);

  public static final Shape<GuideSound> SHAPE =
      Shape.of("guide-sound", GuideSound.class, FILE, START_MS);

  public GuideSound {
    startMs = canonical(startMs);
    Checks checks = SHAPE.check(file, startMs);
    PATH.check("file", file, checks);
    checks.done();
  }

  /** One that begins with the scene. */
  public static GuideSound of(String file) {
    return new GuideSound(file, BigDecimal.ZERO);
  }

  /** The endings that its name may have, each with its dot. */
  public static List<String> endings() {
    return PATH.endings();
  }

  /**
   * Where it is on this machine.
   *
   * @param folder the project's
   * @throws java.nio.file.InvalidPathException if this machine can't have such a name
   */
  public Path in(Path folder) {
    return InnerPath.in(folder, file);
  }
}
