package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.disk.FileClaim;
import lampwright.app.workshop.disk.FileHash;
import lampwright.app.workshop.disk.FoundRecovery;
import lampwright.app.workshop.disk.Recoveries;
import lampwright.app.workshop.disk.Recovery;
import lampwright.engine.disk.Leftovers;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;

/**
 * What the disk's thread found out about a file that is to be opened.
 *
 * @param file absolute
 * @param hash of its bytes
 * @param result what they hold; none if they could not be read
 * @param failure why they could not
 * @param claim none if another has it, or nobody can claim anything
 * @param elsewhere whether another Lampwright has it open
 * @param offers what could be recovered for it
 */
record Opened(
    Path file,
    Optional<String> hash,
    Optional<ReadResult> result,
    String failure,
    Optional<FileClaim> claim,
    boolean elsewhere,
    List<Offer> offers) {
  /**
   * A recovery file to ask about.
   *
   * @param project in it; none if it is damaged
   */
  record Offer(FoundRecovery found, Optional<Project> project) {
    static Offer of(FoundRecovery found) {
      return new Offer(
          found,
          found
              .content()
              .map(c -> c.text().getBytes(StandardCharsets.UTF_8))
              .flatMap(bytes -> ProjectReader.read(found.place().toString(), bytes).project()));
    }

    Recovery content() {
      return found.content().orElseThrow();
    }
  }

  /** The project, if the file is whole. */
  Optional<Project> project() {
    return result.flatMap(ReadResult::project);
  }

  /**
   * Reads a file and all that belongs to it. Waits for the disk.
   *
   * @param isOurs whether this process has claimed the file already
   */
  static Opened read(Path file, Path state, Recoveries recoveries, boolean isOurs) {
    Leftovers.sweep(file.resolveSibling(""));
    Optional<FileClaim> claim = Optional.empty();
    boolean elsewhere = false;
    if (!isOurs) {
      try {
        claim = FileClaim.of(state, file);
        elsewhere = claim.isEmpty();
      } catch (IOException noClaims) {
        // Without a state folder nobody can say so.
        elsewhere = false;
      }
    }
    try {
      return read(file, recoveries, claim, elsewhere);
    } catch (RuntimeException | Error failed) {
      claim.ifPresent(FileClaim::close);
      throw failed;
    }
  }

  private static Opened read(
      Path file, Recoveries recoveries, Optional<FileClaim> claim, boolean claimed) {
    boolean elsewhere = claimed;
    Optional<String> hash = Optional.empty();
    Optional<ReadResult> result = Optional.empty();
    String failure = "";
    try {
      byte[] bytes = ProjectFiles.contents(file);
      hash = Optional.of(FileHash.of(bytes));
      result = Optional.of(ProjectReader.read(file.toString(), bytes));
    } catch (IOException trouble) {
      failure = Failures.words(trouble);
    }
    List<Offer> offers = new ArrayList<>();
    Optional<Project> project = result.flatMap(ReadResult::project);
    for (FoundRecovery found : found(file, recoveries)) {
      Offer offer = Offer.of(found);
      boolean alive = found.content().filter(c -> livesElsewhere(c, recoveries)).isPresent();
      elsewhere |= alive;
      if (alive || isOwn(offer, recoveries)) {
        continue;
      }
      if (offer.project().isPresent() && offer.project().equals(project)) {
        forget(found.place());
      } else {
        offers.add(offer);
      }
    }
    return new Opened(file, hash, result, failure, claim, elsewhere, offers);
  }

  /**
   * What of these is to be offered. What a file holds as well is not, and is removed: a crash came
   * between saving and tidying up.
   */
  static List<Offer> offers(List<FoundRecovery> found) {
    List<Offer> offers = new ArrayList<>();
    for (FoundRecovery each : found) {
      Offer offer = Offer.of(each);
      if (offer.project().isPresent() && offer.project().equals(saved(offer))) {
        forget(each.place());
      } else {
        offers.add(offer);
      }
    }
    return offers;
  }

  private static Optional<Project> saved(Offer offer) {
    try {
      Optional<Path> file = offer.content().file();
      return file.isEmpty() ? Optional.empty() : ProjectReader.read(file.get()).project();
    } catch (IOException gone) {
      return Optional.empty();
    }
  }

  private static boolean livesElsewhere(Recovery content, Recoveries recoveries) {
    return !content.owner().equals(recoveries.self()) && content.owner().isAlive();
  }

  private static boolean isOwn(Offer offer, Recoveries recoveries) {
    return offer.found().content().filter(c -> c.owner().equals(recoveries.self())).isPresent();
  }

  private static List<FoundRecovery> found(Path file, Recoveries recoveries) {
    List<FoundRecovery> found = new ArrayList<>();
    try {
      recoveries.findBeside(file).ifPresent(found::add);
      found.addAll(recoveries.findInState(file));
    } catch (IOException unreadable) {
      // What can't be read can't be recovered; it stays where it is.
      return found;
    }
    return found;
  }

  // The file holds the same: a crash came between saving and tidying up.
  static void forget(Path place) {
    try {
      Files.deleteIfExists(place);
    } catch (IOException stays) {
      return;
    }
  }
}
