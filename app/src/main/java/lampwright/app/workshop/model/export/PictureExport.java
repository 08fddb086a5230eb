package lampwright.app.workshop.model.export;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import javax.imageio.ImageIO;
import lampwright.app.picture.LitFrame;
import lampwright.app.picture.ModelPicture;
import lampwright.app.picture.SceneMovie;
import lampwright.app.picture.Sides;
import lampwright.app.workshop.disk.ModelPhotograph;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Project;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Scene;
import lampwright.engine.work.LatestWorker;

/**
 * Writes a picture of the side of the model that is shown, lit as in the scene, moving or still.
 */
public final class PictureExport {
  private static final String STILL = ".png";

  private final Texts texts = Texts.of("export");
  private final Bench bench;
  private final DrawingSheet sheet;
  private final BackgroundFile files;

  public PictureExport(Bench bench, DrawingSheet sheet, BackgroundFile files) {
    this.bench = bench;
    this.sheet = sheet;
    this.files = files;
  }

  /** Asks for a file and writes it; the builder hears when it is there, or why it is not. */
  public void make() {
    bench.scene().ifPresent(this::make);
  }

  private void make(Scene scene) {
    Project project = bench.project();
    View view = sheet.viewProperty().get();
    boolean night = sheet.nightProperty().get();
    files.make(
        texts.get("picture.title"),
        "-" + scene.id(),
        List.of(".gif", STILL),
        (file, turn) -> {
          LitFrame lit = LitFrame.of(project, scene);
          View side = Sides.fullest(lit.lamps(), view);
          ModelPicture model = ModelPicture.of(lit, side, photograph(project, side), night);
          return String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(STILL)
              ? still(model, file)
              : moving(model, lit, file, turn);
        });
  }

  private Optional<BufferedImage> photograph(Project project, View side) {
    return files
        .project()
        .flatMap(file -> project.picture(side).flatMap(own -> ModelPhotograph.read(file, own)));
  }

  private static String still(ModelPicture model, Path file) throws IOException {
    BufferedImage image = model.still();
    WholeFile.write(file, out -> ImageIO.write(image, "png", out));
    return "";
  }

  private String moving(ModelPicture model, LitFrame lit, Path file, LatestWorker.Turn turn)
      throws IOException {
    SceneMovie movie = new SceneMovie(model, lit.table(), SceneMovie.MOST_SECONDS);
    FlashCaution flashes = movie.flashes();
    WholeFile.write(
        file,
        out ->
            movie.write(
                SceneMovie.mostLight(!flashes.passes()),
                done -> {
                  if (turn.overtaken()) {
                    throw new CancellationException();
                  }
                },
                out));
    return flashes.passes()
        ? ""
        : texts.get(
            "picture.dimmed",
            Integer.toString(flashes.most()),
            Integer.toString(FlashCaution.MOST_FLASHES));
  }
}
