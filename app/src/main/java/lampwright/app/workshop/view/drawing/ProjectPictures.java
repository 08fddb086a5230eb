package lampwright.app.workshop.view.drawing;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.image.Image;
import lampwright.app.workshop.disk.ProjectFolder;
import lampwright.app.workshop.edit.PictureFile;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Picture;

/** The pictures beside the project, read in the background when they are first wanted. */
final class ProjectPictures {
  /**
   * What there is of a picture.
   *
   * @param image none while it is read, or if it can't be
   * @param missing what is wrong with it, in words
   */
  record Found(Optional<Image> image, Optional<String> missing) {
    static final Found NOTHING = new Found(Optional.empty(), Optional.empty());
  }

  private static final int MOST_PIXELS = 1600;

  private final Texts texts = Texts.of("drawing");
  private final Supplier<Optional<Path>> projectFile;
  private final Runnable loaded;
  private final Map<Path, Image> pictures = new HashMap<>();

  /**
   * @param loaded is told when a picture has been read
   */
  ProjectPictures(Supplier<Optional<Path>> projectFile, Runnable loaded) {
    this.projectFile = projectFile;
    this.loaded = loaded;
  }

  Found find(Optional<Picture> wanted) {
    if (wanted.isEmpty()) {
      return Found.NOTHING;
    }
    String name = wanted.get().file();
    Found missing = wrong("picture.missing", name);
    Optional<Path> folder =
        projectFile.get().flatMap(f -> Optional.ofNullable(f.toAbsolutePath().getParent()));
    if (folder.isEmpty()) {
      return missing;
    }
    Path file = wanted.get().in(folder.get());
    Image known = pictures.get(file);
    if (known == null) {
      if (PictureFile.size(file).isEmpty()) {
        return missing;
      }
      try {
        if (ProjectFolder.leadsOut(folder.get(), file)) {
          return wrong("picture.outside", name);
        }
      } catch (IOException gone) {
        return missing;
      }
      known = load(file);
      pictures.put(file, known);
    }
    if (known.isError()) {
      return missing;
    }
    return known.getProgress() < 1
        ? Found.NOTHING
        : new Found(Optional.of(known), Optional.empty());
  }

  private Found wrong(String key, String name) {
    return new Found(Optional.empty(), Optional.of(texts.get(key, name)));
  }

  private Image load(Path file) {
    Image loading = new Image(file.toUri().toString(), MOST_PIXELS, MOST_PIXELS, true, true, true);
    loading
        .progressProperty()
        .addListener(
            (of, before, now) -> {
              if (now.doubleValue() >= 1) {
                loaded.run();
              }
            });
    return loading;
  }
}
