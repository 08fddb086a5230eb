package lampwright.app.workshop.disk;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;
import lampwright.app.workshop.edit.PictureFile;
import lampwright.engine.document.Picture;

/** The builder's own picture of a model, read without a window. */
public final class ModelPhotograph {
  private ModelPhotograph() {}

  /**
   * Reads it, if it is a PNG or JPEG within bounds that is in the project's folder.
   *
   * @param project the project's file
   */
  public static Optional<BufferedImage> read(Path project, Picture picture) {
    Path folder = project.toAbsolutePath().getParent();
    if (folder == null) {
      return Optional.empty();
    }
    Path file = picture.in(folder);
    try {
      return PictureFile.size(file).isPresent() && !ProjectFolder.leadsOut(folder, file)
          ? Optional.ofNullable(ImageIO.read(file.toFile()))
          : Optional.empty();
    } catch (IOException | RuntimeException damaged) {
      // What is damaged past its head ends a reader in many ways.
      return Optional.empty();
    }
  }
}
