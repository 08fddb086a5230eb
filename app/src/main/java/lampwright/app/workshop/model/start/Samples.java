package lampwright.app.workshop.model.start;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;

/** The samples that come with the program. */
public final class Samples {
  private static final List<String> NAMES =
      List.of("recovery-tractor", "mountain-rescue", "harbour-dusk", "bench-rgbw");

  private Samples() {}

  /** All of them; each is read anew. */
  public static List<Project> all() {
    return NAMES.stream().map(Samples::read).toList();
  }

  private static Project read(String name) {
    String file = name + ".lampwright.json";
    try (InputStream in =
        Objects.requireNonNull(
            Samples.class.getResourceAsStream("/lampwright/app/samples/" + file), file)) {
      return ProjectReader.read(file, in.readAllBytes()).project().orElseThrow();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
