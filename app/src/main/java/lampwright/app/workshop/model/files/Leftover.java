package lampwright.app.workshop.model.files;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import lampwright.engine.document.Project;

/**
 * Unsaved work of a Lampwright that ended without saving.
 *
 * @param place of the recovery file
 * @param file that it belongs to; none for a project never saved
 * @param written when, to the second
 * @param project as it was
 */
public record Leftover(Path place, Optional<Path> file, Instant written, Project project) {
  static Leftover of(Opened.Offer offer) {
    return new Leftover(
        offer.found().place(),
        offer.content().file(),
        offer.content().written(),
        offer.project().orElseThrow());
  }
}
