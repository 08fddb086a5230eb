package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.disk.FileHash;
import lampwright.app.workshop.disk.Recoveries;
import lampwright.app.workshop.disk.Recovery;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectWriter;

/**
 * Keeps what is not saved in a recovery file, within a second of each edit and at most once a
 * second; there is none while everything is saved. For the screen's thread; it writes on the
 * disk's.
 */
public final class Autosave {
  /** The time from the start of one write to the start of the next, at least. */
  static final Duration PAUSE = Duration.ofSeconds(1);

  private final Workplace place;
  private final Document document;
  private final Recoveries recoveries;
  private final ReadOnlyObjectWrapper<Optional<String>> trouble =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Project>> safe =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Duration> lastStart = Optional.empty();
  private boolean planned;
  private boolean besideTaken;
  private boolean closed;
  private int number;
  // Of the disk's thread alone.
  private Optional<Path> written = Optional.empty();
  private Optional<Head> head = Optional.empty();
  private Optional<Save> lastSave = Optional.empty();

  /**
   * What a recovery file departs from.
   *
   * @param hash of what the file held
   */
  private record Head(Optional<Path> file, Optional<String> hash) {}

  /**
   * What saves made of a file that the document does not know of yet.
   *
   * @param before what the document may still take it to hold
   * @param now hash of what it holds
   */
  private record Save(Path file, Set<Optional<String>> before, String now) {}

  Autosave(Workplace place, Document document, Recoveries recoveries) {
    this.place = place;
    this.document = document;
    this.recoveries = recoveries;
    place.bench().projectProperty().addListener((of, before, now) -> plan());
    document.changedProperty().addListener((of, before, now) -> plan());
  }

  /** Why unsaved work can't be kept safe at the moment. */
  public ReadOnlyObjectProperty<Optional<String>> troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** The project that a crash would leave to be recovered; none if there is no recovery file. */
  public ReadOnlyObjectProperty<Optional<Project>> safeProperty() {
    return safe.getReadOnlyProperty();
  }

  /**
   * Another document is on the bench; what was kept of the one before is given up.
   *
   * @param taken whether the place beside its file is another's
   */
  void begin(boolean taken) {
    besideTaken = taken;
    number++;
    place.disk().run(this::remove);
    safe.set(Optional.empty());
    plan();
  }

  /** What lies beside the document's file is to be looked at later: it is not written over. */
  void leaveBeside() {
    besideTaken = true;
  }

  /** Keeps nothing any more. */
  void close() {
    closed = true;
    end();
  }

  /** Writes what is on the bench at once, and then removes what it was recovered from. */
  void takeOver(Path recovered) {
    keep();
    place
        .disk()
        .run(
            () -> {
              if (written.isPresent() && !written.equals(Optional.of(recovered))) {
                Opened.forget(recovered);
              }
            });
  }

  /** All is saved, or given up: removes the recovery file. */
  void end() {
    place.disk().run(this::remove);
    safe.set(Optional.empty());
  }

  /**
   * This is about to be saved. For the disk's thread. If there is a recovery file it then holds the
   * same: a kill before the save leaves this as unsaved work, a kill after it nothing to recover.
   */
  void saving(Path file, Project project) {
    if (written.isEmpty() || head.isEmpty()) {
      return;
    }
    boolean isBeside = written.equals(head.get().file().map(Recoveries::beside));
    try {
      Head now = isBeside ? head.get() : new Head(Optional.of(file), FileHash.of(file));
      WholeFile.write(written.get(), text(project, now));
      head = Optional.of(now);
    } catch (IOException full) {
      // Saving is what matters more; the older recovery file goes once it is done.
      return;
    }
  }

  /**
   * The document's file was saved. For the disk's thread.
   *
   * @param before hash of what it held as far as the document knows
   * @param now hash of what it holds
   */
  void saved(Path file, Optional<String> before, String now) {
    Set<Optional<String>> all = new HashSet<>(Set.of(before));
    lastSave
        .filter(save -> save.file().equals(file))
        .ifPresent(
            save -> {
              all.addAll(save.before());
              all.add(Optional.of(save.now()));
            });
    lastSave = Optional.of(new Save(file, all, now));
    // What the recovery file holds now equals this, and what comes next departs from it.
    head =
        head.map(
            h -> h.file().equals(Optional.of(file)) ? new Head(h.file(), Optional.of(now)) : h);
  }

  /** Whether what a file holds is what was saved last. For the disk's thread. */
  boolean isSaved(Path file, String hash) {
    return lastSave.filter(save -> save.file().equals(file) && save.now().equals(hash)).isPresent();
  }

  /** The document knows of the save that made this. */
  void knows(String hash) {
    place.disk().run(() -> lastSave = lastSave.filter(save -> !save.now().equals(hash)));
  }

  private void plan() {
    if (planned || closed) {
      return;
    }
    planned = true;
    Duration now = place.disk().now();
    Duration wait = lastStart.map(start -> PAUSE.minus(now.minus(start))).orElse(Duration.ZERO);
    if (wait.isNegative() || wait.isZero()) {
      // After the listeners of this edit, which may be about to say that all is saved.
      place.screen().execute(this::keep);
    } else {
      place.disk().runAfter(wait, () -> place.screen().execute(this::keep));
    }
  }

  private void keep() {
    planned = false;
    if (closed) {
      return;
    }
    if (!document.changed()) {
      end();
      return;
    }
    lastStart = Optional.of(place.disk().now());
    Project project = place.bench().project();
    Optional<Path> file = document.file();
    Optional<String> hash = document.hash();
    Path inState = recoveries.inState(number);
    List<Path> places =
        file.filter(f -> !besideTaken)
            .map(f -> List.of(Recoveries.beside(f), inState))
            .orElse(List.of(inState));
    place
        .disk()
        .run(
            () -> {
              Optional<String> failed = tried(project, new Head(file, hash), places);
              place.screen().execute(() -> kept(project, failed));
            });
  }

  private void kept(Project project, Optional<String> failed) {
    trouble.set(failed);
    if (failed.isEmpty() && document.changed()) {
      safe.set(Optional.of(project));
    }
  }

  private String text(Project project, Head departs) {
    return new Recovery(
            departs.file(),
            departs.hash(),
            recoveries.self(),
            Instant.now().truncatedTo(ChronoUnit.SECONDS),
            ProjectWriter.write(project))
        .write();
  }

  private Optional<String> tried(Project project, Head departs, List<Path> places) {
    try {
      return write(project, departs, places);
    } catch (RuntimeException | Error failed) {
      return Optional.of(Failures.words(failed));
    }
  }

  private Optional<String> write(Project project, Head asked, List<Path> places) {
    // It may have been saved since this was asked for.
    Head departs =
        lastSave
            .filter(save -> asked.file().equals(Optional.of(save.file())))
            .filter(save -> save.before().contains(asked.hash()))
            .map(save -> new Head(asked.file(), Optional.of(save.now())))
            .orElse(asked);
    Optional<Path> file = departs.file();
    String text = text(project, departs);
    String reason = "";
    for (Path where : places) {
      try {
        if (where.equals(file.map(Recoveries::beside).orElse(null))
            && !Files.isDirectory(where.resolveSibling(""))) {
          // The project's folder is gone, and not to be made anew for this.
          continue;
        }
        WholeFile.write(where, text);
        head = Optional.of(departs);
        if (!written.equals(Optional.of(where))) {
          remove();
          written = Optional.of(where);
        }
        return Optional.empty();
      } catch (IOException failed) {
        reason = Failures.words(failed);
      }
    }
    return Optional.of(reason);
  }

  private void remove() {
    try {
      if (written.isPresent()) {
        Files.deleteIfExists(written.get());
      }
    } catch (IOException stays) {
      // It will be offered when the file is opened again, and can be turned down then.
    }
    written = Optional.empty();
  }
}
