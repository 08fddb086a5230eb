package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import lampwright.app.workshop.disk.FileClaim;

/** The claim to the file on the bench. For the disk's thread alone. */
final class Claims {
  private final Path state;
  private Optional<FileClaim> claim = Optional.empty();

  Claims(Path state) {
    this.state = state;
  }

  /** Lets the file before go, and holds this claim. */
  void hold(Optional<FileClaim> newClaim) {
    claim.ifPresent(FileClaim::close);
    claim = newClaim;
  }

  /**
   * Claims a file to which the project is saved from now on.
   *
   * @return whether no other has it
   */
  boolean take(Path file) {
    try {
      Optional<FileClaim> taken = FileClaim.of(state, file);
      hold(taken);
      return taken.isPresent();
    } catch (IOException noClaims) {
      return true;
    }
  }
}
