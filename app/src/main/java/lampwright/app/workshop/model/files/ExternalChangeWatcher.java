package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.disk.FileHash;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;

/** Notices what others do to the file of the project on the bench. For the screen's thread. */
final class ExternalChangeWatcher {
  /** A changed stamp calls for a look at the content. */
  private record Stamp(Path file, long size, FileTime time) {
    static Optional<Stamp> of(Path file) {
      try {
        BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
        return Optional.of(new Stamp(file, found.size(), found.lastModifiedTime()));
      } catch (IOException gone) {
        return Optional.empty();
      }
    }
  }

  private record Reloaded(String hash, ReadResult result) {}

  private record Seen(Path file, Optional<String> hash) {}

  private final Texts texts = Texts.of("files");
  private final Workplace place;
  private final Document document;
  private Optional<Seen> asked = Optional.empty();
  private boolean asking;
  // Of the disk's thread alone.
  private Optional<Stamp> stamp = Optional.empty();

  ExternalChangeWatcher(Workplace place, Document document) {
    this.place = place;
    this.document = document;
  }

  /**
   * Looks whether the file is as it was.
   *
   * @param save saves the document
   * @param saveAs saves it to another file
   */
  void check(Runnable save, Runnable saveAs) {
    Optional<Path> file = document.file();
    if (file.isEmpty() || asking) {
      return;
    }
    Optional<String> known = document.hash();
    place
        .disk()
        .run(
            () -> {
              Optional<Stamp> now = Stamp.of(file.get());
              if (now.isPresent() && now.equals(stamp)) {
                return;
              }
              try {
                Optional<String> hash = FileHash.of(file.get());
                stamp = now;
                if (!hash.equals(known)) {
                  Seen seen = new Seen(file.get(), hash);
                  place.screen().execute(() -> noticed(seen, known, save, saveAs));
                }
              } catch (IOException unreadable) {
                // Perhaps only for now: another program may be writing it.
                stamp = Optional.empty();
              }
            });
  }

  private void noticed(Seen seen, Optional<String> known, Runnable save, Runnable saveAs) {
    // It may have been saved meanwhile; and one question is enough.
    boolean old =
        !document.file().equals(Optional.of(seen.file())) || !document.hash().equals(known);
    if (old || asking || asked.equals(Optional.of(seen))) {
      return;
    }
    asked = Optional.of(seen);
    if (seen.hash().isPresent()) {
      ask(seen.hash(), () -> {}, saveAs);
    } else {
      gone(save, saveAs);
    }
  }

  /**
   * Asks what to do about another's content of the file.
   *
   * @param hash of that
   * @param kept done if what is on the bench is to replace it
   */
  void ask(Optional<String> hash, Runnable kept, Runnable saveAs) {
    int answer =
        choose(
            texts.get("outside.title", document.name()),
            texts.get(document.changed() ? "outside.text.changed" : "outside.text"),
            List.of(
                texts.get("outside.reload"),
                texts.get("outside.keep"),
                texts.get("save.as"),
                texts.get("outside.later")));
    switch (answer) {
      case 0 -> reload();
      case 1 -> {
        document.holds(new Document.Saved(hash, Optional.empty()));
        kept.run();
      }
      case 2 -> saveAs.run();
      default -> {}
    }
  }

  private void gone(Runnable save, Runnable saveAs) {
    document.holds(new Document.Saved(Optional.empty(), Optional.empty()));
    int answer =
        choose(
            texts.get("gone.title", document.name()),
            texts.get("gone.text"),
            List.of(texts.get("gone.save"), texts.get("save.as"), texts.get("outside.later")));
    if (answer == 0) {
      save.run();
    } else if (answer == 1) {
      saveAs.run();
    }
  }

  private int choose(String title, String text, List<String> answers) {
    asking = true;
    try {
      return place.dialogs().choose(title, text, answers);
    } finally {
      asking = false;
    }
  }

  private void reload() {
    Path file = document.file().orElseThrow();
    place.then(
        place.reader(),
        () -> {
          byte[] bytes = ProjectFiles.contents(file);
          return new Reloaded(FileHash.of(bytes), ProjectReader.read(file.toString(), bytes));
        },
        found -> reloaded(file, found.hash(), found.result()),
        words -> place.dialogs().tell(texts.get("damaged.title", document.name()), words));
  }

  private void reloaded(Path file, String hash, ReadResult result) {
    if (!document.file().equals(Optional.of(file))) {
      return;
    }
    Optional<Project> project = result.project();
    if (project.isEmpty()) {
      place
          .dialogs()
          .tell(
              texts.get("damaged.title", document.name()),
              texts.get("damaged.text", String.join("\n", result.lines())));
      return;
    }
    place.bench().endGesture();
    place.bench().apply(Edit.of(texts.get("edit.reload"), now -> project.get()));
    document.holds(new Document.Saved(Optional.of(hash), project));
  }
}
