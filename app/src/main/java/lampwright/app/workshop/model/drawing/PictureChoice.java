package lampwright.app.workshop.model.drawing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.edit.PictureFile;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;

/** Gives a view a picture of the builder's, which is kept beside the project. */
public final class PictureChoice implements OwnPicture {
  private final Texts texts = Texts.of("drawing");
  private final DrawingModel model;
  private final Dialogs dialogs;
  private final Supplier<Optional<Path>> projectFile;
  private final Background disk;
  private final Executor screen;

  /**
   * @param projectFile where the project was saved
   */
  public PictureChoice(
      DrawingModel model,
      Dialogs dialogs,
      Supplier<Optional<Path>> projectFile,
      Background disk,
      Executor screen) {
    this.model = model;
    this.dialogs = dialogs;
    this.projectFile = projectFile;
    this.disk = disk;
    this.screen = screen;
  }

  /** Asks for a file; one from elsewhere is copied beside the project if the builder wants it. */
  public void choose() {
    Optional<Path> folder =
        projectFile.get().flatMap(f -> Optional.ofNullable(f.toAbsolutePath().getParent()));
    if (folder.isEmpty()) {
      dialogs.tell(texts.get("picture.unsaved.title"), texts.get("picture.unsaved"));
      return;
    }
    file().ifPresent(file -> take(folder.get(), file));
  }

  private Optional<Path> file() {
    return dialogs
        .fileToOpen(texts.get("picture.choose"), List.of("*.png", "*.jpg", "*.jpeg"))
        .map(file -> file.toAbsolutePath().normalize());
  }

  @Override
  public void ask(Consumer<Path> then) {
    file()
        .ifPresent(
            file ->
                disk.run(
                    () -> {
                      boolean good = PictureFile.size(file).isPresent();
                      screen.execute(
                          () -> {
                            if (good) {
                              then.accept(file);
                            } else {
                              bad(file);
                            }
                          });
                    }));
  }

  @Override
  public void use(Path file) {
    projectFile
        .get()
        .flatMap(f -> Optional.ofNullable(f.toAbsolutePath().getParent()))
        .ifPresent(folder -> take(folder, file));
  }

  private void bad(Path file) {
    dialogs.tell(texts.get("picture.copy.title"), texts.get("picture.bad", shown(file)));
  }

  private static String shown(Path file) {
    return SafeText.text(String.valueOf(file.getFileName()), SafeText.MAX_MESSAGE);
  }

  private void take(Path folder, Path file) {
    disk.run(
        () -> {
          boolean good = PictureFile.size(file).isPresent();
          boolean out = good && leadsOut(folder, file);
          screen.execute(() -> take(folder, file, good, out));
        });
  }

  private static boolean leadsOut(Path folder, Path file) {
    try {
      return PictureFile.leadsOut(folder, file);
    } catch (IOException gone) {
      return true;
    }
  }

  private void take(Path folder, Path file, boolean good, boolean out) {
    String name = shown(file);
    if (!good) {
      bad(file);
      return;
    }
    Path base = folder.normalize();
    if (file.startsWith(base) && out) {
      dialogs.tell(texts.get("picture.copy.title"), texts.get("picture.outside", name));
      return;
    }
    if (file.startsWith(base)) {
      model.picture(Optional.of(base.relativize(file).toString().replace('\\', '/')));
      return;
    }
    int answer =
        dialogs.choose(
            texts.get("picture.copy.title"),
            texts.get("picture.copy", name),
            List.of(texts.get("picture.copy.yes"), texts.get("picture.copy.no")));
    if (answer == 0) {
      copy(file, base.resolve(file.getFileName()), name);
    }
  }

  private void copy(Path from, Path to, String name) {
    disk.run(
        () -> {
          try {
            if (Files.exists(to) && Files.mismatch(from, to) != -1) {
              screen.execute(
                  () ->
                      dialogs.tell(
                          texts.get("picture.copy.title"), texts.get("picture.exists", name)));
              return;
            }
            if (!Files.exists(to)) {
              Files.copy(from, to);
            }
            screen.execute(() -> model.picture(Optional.of(String.valueOf(to.getFileName()))));
          } catch (IOException failed) {
            screen.execute(
                () ->
                    dialogs.tell(
                        texts.get("picture.copy.title"), String.valueOf(failed.getMessage())));
          }
        });
  }
}
