package lampwright.app.workshop.view;

import java.net.URL;
import java.util.Objects;

/** The style sheets of the workshop's parts. */
public final class Stylesheets {
  private Stylesheets() {}

  /** Where the sheet of a part is, for a scene's list of sheets. */
  public static String url(String part) {
    URL sheet = Stylesheets.class.getResource("/lampwright/app/workshop/" + part + ".css");
    return Objects.requireNonNull(sheet, part).toExternalForm();
  }
}
