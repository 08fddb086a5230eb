package lampwright.app.workshop.model.export;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What the builder selected for an export apart from scenes, which differ from project to project.
 *
 * @param folder where it goes
 * @param formats keys of the formats; none for the usual one
 * @param address of the first byte in hex files, as it was written
 */
public record ExportWishes(Optional<Path> folder, List<String> formats, String address) {
  /** Before the first export. */
  public static final ExportWishes FIRST = new ExportWishes(Optional.empty(), List.of(), "0");

  public ExportWishes {
    formats = List.copyOf(formats);
  }

  /** The same in another folder. */
  public ExportWishes in(Path place) {
    return new ExportWishes(Optional.of(place), formats, address);
  }
}
