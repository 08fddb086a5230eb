package lampwright.app.workshop.model;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.disk.ProjectFolder;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;

/** Asks for a file that the project shall name, which is kept beside the project. */
public final class FileChoice {
  /**
   * What is asked for.
   *
   * @param texts has its words
   * @param stem with which the keys of its words begin
   * @param patterns of its names, such as {@code *.png}
   * @param good whether a file is one; asked in the background
   * @param take is given the path from the project's folder, with {@code /} between folders
   */
  public record Kind(
      Texts texts,
      String stem,
      List<String> patterns,
      Predicate<Path> good,
      Consumer<String> take) {
    public Kind {
      patterns = List.copyOf(patterns);
    }

    private String words(String key) {
      return texts.get(stem + "." + key);
    }

    private String words(String key, String name) {
      return texts.get(stem + "." + key, name);
    }
  }

  private final Dialogs dialogs;
  private final Supplier<Optional<Path>> projectFile;
  private final Background disk;
  private final Executor screen;

  /**
   * @param projectFile where the project was saved
   */
  public FileChoice(
      Dialogs dialogs, Supplier<Optional<Path>> projectFile, Background disk, Executor screen) {
    this.dialogs = dialogs;
    this.projectFile = projectFile;
    this.disk = disk;
    this.screen = screen;
  }

  /** Asks for a file; one from elsewhere is copied beside the project if the builder wants it. */
  public void choose(Kind kind) {
    Optional<Path> folder =
        projectFile.get().flatMap(f -> Optional.ofNullable(f.toAbsolutePath().getParent()));
    if (folder.isEmpty()) {
      dialogs.tell(kind.words("unsaved.title"), kind.words("unsaved"));
      return;
    }
    file(kind).ifPresent(file -> take(kind, folder.get(), file));
  }

  private Optional<Path> file(Kind kind) {
    return dialogs
        .fileToOpen(kind.words("choose"), kind.patterns())
        .map(file -> file.toAbsolutePath().normalize());
  }

  /**
   * Asks for a file before there is a project that could name it.
   *
   * @param then gets the file, once it is known to be good; not called without one
   */
  public void ask(Kind kind, Consumer<Path> then) {
    file(kind)
        .ifPresent(
            file ->
                disk.run(
                    () -> {
                      boolean good = kind.good().test(file);
                      screen.execute(
                          () -> {
                            if (good) {
                              then.accept(file);
                            } else {
                              dialogs.tell(kind.words("copy.title"), kind.words("bad", name(file)));
                            }
                          });
                    }));
  }

  /** Takes a file that was asked for before; nothing happens if the project has no file. */
  public void use(Kind kind, Path file) {
    projectFile
        .get()
        .flatMap(f -> Optional.ofNullable(f.toAbsolutePath().getParent()))
        .ifPresent(folder -> take(kind, folder, file));
  }

  private static String name(Path file) {
    return SafeText.text(String.valueOf(file.getFileName()), SafeText.MAX_MESSAGE);
  }

  private void take(Kind kind, Path folder, Path file) {
    disk.run(
        () -> {
          boolean good = kind.good().test(file);
          boolean out = good && leadsOut(folder, file);
          screen.execute(() -> take(kind, folder, file, good, out));
        });
  }

  private static boolean leadsOut(Path folder, Path file) {
    try {
      return ProjectFolder.leadsOut(folder, file);
    } catch (IOException gone) {
      return true;
    }
  }

  private void take(Kind kind, Path folder, Path file, boolean good, boolean out) {
    String name = name(file);
    if (!good) {
      dialogs.tell(kind.words("copy.title"), kind.words("bad", name));
      return;
    }
    Path base = folder.normalize();
    if (file.startsWith(base) && out) {
      dialogs.tell(kind.words("copy.title"), kind.words("outside", name));
      return;
    }
    if (file.startsWith(base)) {
      kind.take().accept(base.relativize(file).toString().replace('\\', '/'));
      return;
    }
    int answer =
        dialogs.choose(
            kind.words("copy.title"),
            kind.words("copy", name),
            List.of(kind.words("copy.yes"), kind.words("copy.no")));
    if (answer == 0) {
      copy(kind, file, base.resolve(file.getFileName()), name);
    }
  }

  private void copy(Kind kind, Path from, Path to, String name) {
    disk.run(
        () -> {
          try {
            if (Files.exists(to) && Files.mismatch(from, to) != -1) {
              screen.execute(
                  () -> dialogs.tell(kind.words("copy.title"), kind.words("exists", name)));
              return;
            }
            if (!Files.exists(to)) {
              Files.copy(from, to);
            }
            screen.execute(() -> kind.take().accept(String.valueOf(to.getFileName())));
          } catch (IOException failed) {
            screen.execute(
                () -> dialogs.tell(kind.words("copy.title"), String.valueOf(failed.getMessage())));
          }
        });
  }
}
