package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lampwright.app.workshop.disk.FileHash;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.json.ProjectWriter;

/** Writes the project on the bench to its file. For the screen's thread. */
final class Saver {
  static final String ENDING = ".lampwright.json";

  /**
   * What came of writing.
   *
   * @param elsewhere whether another has the file open
   */
  private record Written(String hash, boolean elsewhere) {}

  private final Texts texts = Texts.of("files");
  private final Workplace place;
  private final Document document;
  private final Autosave autosave;
  private final Claims claims;
  private final ExternalChangeWatcher watcher;
  private final Consumer<Path> saved;

  Saver(
      Workplace place,
      Document document,
      Autosave autosave,
      Claims claims,
      ExternalChangeWatcher watcher,
      Consumer<Path> saved) {
    this.place = place;
    this.document = document;
    this.autosave = autosave;
    this.claims = claims;
    this.watcher = watcher;
    this.saved = saved;
  }

  /**
   * Saves to the document's file, or asks for one.
   *
   * @param then done once it is saved, and not if it is not
   */
  void save(Runnable then) {
    Optional<Path> file = document.file();
    if (file.isEmpty()) {
      saveAs(then);
      return;
    }
    Optional<String> expected = document.hash();
    place.then(
        place.disk(),
        () -> changed(file.get(), expected),
        now -> {
          if (now.isPresent()) {
            watcher.ask(now, () -> save(then), this::saveAs);
          } else {
            write(file.get(), then);
          }
        },
        words -> failed(file.get(), words, then));
  }

  // The hash of what another wrote there.
  private Optional<String> changed(Path file, Optional<String> expected) {
    try {
      return FileHash.of(file)
          .filter(now -> !expected.equals(Optional.of(now)))
          // Two saves in a row: the document may not know of the first yet.
          .filter(now -> !autosave.isSaved(file, now));
    } catch (IOException unreadable) {
      // Then it can't be written either, or is nothing to be kept.
      return Optional.empty();
    }
  }

  /** Saves to another file, which is the document's from then on. */
  void saveAs() {
    saveAs(() -> {});
  }

  private void saveAs(Runnable then) {
    String name =
        document.file().map(path -> String.valueOf(path.getFileName())).orElseGet(this::suggestion);
    Optional<Path> chosen =
        place.dialogs().fileToSave(texts.get("save.as.title"), name, List.of("*" + ENDING));
    if (chosen.isEmpty()) {
      return;
    }
    Path file = chosen.get().toAbsolutePath().normalize();
    boolean named = String.valueOf(file.getFileName()).contains(".");
    if (named) {
      if (document.file().equals(Optional.of(file))) {
        save(then);
      } else {
        write(file, then);
      }
      return;
    }
    // The name with our ending is not the one that the builder was asked about.
    Path ended = file.resolveSibling(file.getFileName() + ENDING);
    place
        .disk()
        .run(
            () -> {
              boolean stands = Files.exists(ended);
              place
                  .screen()
                  .execute(
                      () -> {
                        if (!stands || replaces(ended)) {
                          write(ended, then);
                        }
                      });
            });
  }

  private boolean replaces(Path file) {
    return place
            .dialogs()
            .choose(
                texts.get("replace.title", file.getFileName()),
                texts.get("replace.text", file),
                List.of(texts.get("replace.yes"), texts.get("cancel")))
        == 0;
  }

  private String suggestion() {
    String plain =
        place.bench().project().name().replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    return (plain.isEmpty() ? texts.get("suggested.name") : plain) + ENDING;
  }

  private void write(Path file, Runnable then) {
    Project project = place.bench().project();
    Optional<String> before = document.hash();
    boolean other = !document.file().equals(Optional.of(file));
    place.then(
        place.disk(),
        () -> {
          // Else a kill from here on would leave older work to be recovered over this.
          autosave.saving(file, project);
          ProjectFiles.save(project, file);
          byte[] bytes = ProjectWriter.write(project).getBytes(StandardCharsets.UTF_8);
          String hash = FileHash.of(bytes);
          if (!other) {
            autosave.saved(file, before, hash);
          }
          return new Written(hash, other && !claims.take(file));
        },
        written -> done(file, project, written.hash(), other, written.elsewhere(), then),
        words -> failed(file, words, then));
  }

  private void done(
      Path file, Project project, String hash, boolean other, boolean elsewhere, Runnable then) {
    document.belongsTo(
        Optional.of(file), new Document.Saved(Optional.of(hash), Optional.of(project)));
    autosave.knows(hash);
    if (other) {
      autosave.begin(elsewhere);
      if (elsewhere) {
        place
            .dialogs()
            .tell(texts.get("twice.title", file.getFileName()), texts.get("twice.saved", file));
      }
    }
    saved.accept(file);
    then.run();
  }

  private void failed(Path file, String reason, Runnable then) {
    int answer =
        place
            .dialogs()
            .choose(
                texts.get("save.failed.title", file.getFileName()),
                texts.get("save.failed.text", reason),
                List.of(texts.get("save.as"), texts.get("back")));
    if (answer == 0) {
      saveAs(then);
    }
  }
}
