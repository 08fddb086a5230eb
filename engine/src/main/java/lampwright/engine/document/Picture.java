package lampwright.engine.document;

import com.google.common.base.CharMatcher;
import com.google.common.base.Splitter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.check.Checks;
import lampwright.engine.field.Field;
import lampwright.engine.field.FormType;
import lampwright.engine.field.Shape;
import lampwright.engine.rig.View;

/**
 * The builder's own picture of the model, on which the lamps of one view are drawn.
 *
 * @param view the side that it shows
 * @param file where it is, from the project's folder and not outside it, with {@code /} between
 *     folders
 */
public record Picture(View view, String file) {
  public static final int MAX_FILE_LENGTH = 300;

  /** The endings that a picture's name may have, in small or capital letters. */
  public static final List<String> ENDINGS = List.of(".png", ".jpg", ".jpeg");

  // A colon is a drive or a hidden stream to some file systems.
  private static final CharMatcher BARRED =
      CharMatcher.javaIsoControl()
          .or(CharMatcher.anyOf("\\:"))
          .or(CharMatcher.inRange('\u2028', '\u2029'));
  private static final Set<String> NO_NAMES = Set.of("", ".", "..");

  public static final Field<Picture, View> VIEW =
      Field.required("view", View.TYPE, Picture::view, View.SIDE);
  public static final Field<Picture, String> FILE =
      Field.required(
          "file",
          new FormType<>(
              "picture",
              "must be a string",
              "^(?=.{0,300}$)(?!(.*/)?\\.{0,2}(/|$))[^\\u0000-\\u001F\\u007F-\\u009F\\u2028\\u2029\\\\:]*\\.([pP][nN][gG]|[jJ][pP][eE]?[gG])$",
              List.of("side.png", "pictures/rear.jpg"),
              MAX_FILE_LENGTH,
              Optional::of,
              file -> file),
          Picture::file,
          "");

  public static final Shape<Picture> SHAPE = Shape.of("picture", Picture.class, VIEW, FILE);

  public Picture {
    Checks checks = SHAPE.check(view, file);
    if (file.length() > MAX_FILE_LENGTH) {
      checks.add(
          "file",
          file.length() + " characters",
          "must have at most " + MAX_FILE_LENGTH + " characters");
    } else if (BARRED.matchesAnyOf(file)) {
      checks.add("file", file, "must be a path with /, without \\, : or control characters");
    } else if (Splitter.on('/').splitToStream(file).anyMatch(NO_NAMES::contains)) {
      checks.add("file", file, "must be a relative path inside the project folder");
    } else {
      checks.that(isPicture(file), "file", file, "must end in .png, .jpg or .jpeg");
    }
    checks.done();
  }

  /** Whether a name ends as a picture's may. */
  public static boolean isPicture(String name) {
    String small = name.toLowerCase(Locale.ROOT);
    return ENDINGS.stream().anyMatch(small::endsWith);
  }

  /**
   * Where it is on this machine.
   *
   * @param folder the project's
   * @throws java.nio.file.InvalidPathException if this machine can't have such a name
   */
  public Path in(Path folder) {
    return folder.resolve(file.replace("/", folder.getFileSystem().getSeparator()));
  }
}
