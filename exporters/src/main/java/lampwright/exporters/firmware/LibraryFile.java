package lampwright.exporters.firmware;

import com.google.common.base.CharMatcher;
import java.text.Normalizer;

/** The description of the folder for hobby IDEs, which open it as a library. */
final class LibraryFile {
  static final String NAME = "library.properties";

  /** In every folder of ours, whatever the project is called. */
  static final String MARK = "author=Lampwright";

  /**
   * What such a name may hold, and how long it may be: the library specification of such IDEs (not
   * read again).
   */
  private static final CharMatcher ALLOWED =
      CharMatcher.inRange('a', 'z')
          .or(CharMatcher.inRange('A', 'Z'))
          .or(CharMatcher.inRange('0', '9'))
          .or(CharMatcher.anyOf(" _.-"));

  /** Characters of a name (the same specification, not read again). */
  private static final int MAX_LENGTH = 63;

  private LibraryFile() {}

  static String text(String project) {
    return String.join(
        "\n",
        "name=" + libraryName(project),
        "version=1.0.0",
        MARK,
        "maintainer=Lampwright",
        "sentence=Plays the light of one scale model on its pixels and driver outputs.",
        "paragraph=Written by Lampwright for one project: packed scenes, their player, and a driver"
            + " for addressable pixels and PWM outputs.",
        "category=Display",
        "url=",
        "architectures=*",
        "includes=lampwright_show.h,lampwright_scenes.h",
        "");
  }

  /**
   * The name of the library: that of the project as far as such a name can hold it. It begins with
   * ours, so that no project takes the place of another library.
   */
  static String libraryName(String project) {
    String plain =
        CharMatcher.ascii().retainFrom(Normalizer.normalize(project, Normalizer.Form.NFD));
    String name = ALLOWED.negate().or(CharMatcher.is(' ')).trimAndCollapseFrom(plain, ' ');
    String whole = "Lampwright " + (name.isEmpty() ? "Show" : name);
    return whole.substring(0, Math.min(MAX_LENGTH, whole.length())).stripTrailing();
  }
}
