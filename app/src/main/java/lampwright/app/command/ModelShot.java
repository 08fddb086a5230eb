package lampwright.app.command;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import lampwright.app.picture.Glow;
import lampwright.app.picture.LitFrame;
import lampwright.app.picture.ModelPicture;
import lampwright.app.picture.SceneMovie;
import lampwright.app.picture.Sides;
import lampwright.app.workshop.disk.ProjectFolder;
import lampwright.app.workshop.edit.PictureFile;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Project;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Scene;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** Pictures of the model with its lamps lit, still or moving. */
final class ModelShot {
  /** Longer, such a file is larger than most places take. Our own choice. */
  private static final double MOST_SECONDS = 60;

  @Spec(Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--view",
      paramLabel = "VIEW",
      description =
          "the side of the model: front, side, rear or top. Default of a *.gif: the side with the"
              + " most lamps")
  private Optional<String> view = Optional.empty();

  @Option(names = "--day", description = "the model on paper, by day. Default: by night")
  private boolean day;

  @Option(
      names = "--seconds",
      paramLabel = "N",
      description = "how much of the scene a *.gif shows, from its start; 0.1 to 60. Default: all")
  private Optional<Double> seconds = Optional.empty();

  @Option(
      names = "--full-light",
      description =
          "a *.gif at full light even where it fails the flash caution. Default: dimmed then, as in"
              + " the workshop")
  private boolean fullLight;

  /**
   * Whether the options fit the form of the file.
   *
   * @throws ParameterException if one does not
   */
  void check(String form) {
    boolean moving = form.equals("gif");
    refuse(view.isPresent() && form.equals("svg"), "--view: needs a *.png or a *.gif");
    refuse(day && !isAskedFor(form), "--day: needs a *.gif, or --view with a *.png");
    refuse(seconds.isPresent() && !moving, "--seconds: needs a *.gif");
    refuse(fullLight && !moving, "--full-light: needs a *.gif");
    refuse(
        seconds.filter(s -> !(s >= 0.1 && s <= MOST_SECONDS)).isPresent(),
        "--seconds: must be 0.1 to 60");
    view.ifPresent(this::side);
  }

  private void refuse(boolean wrong, String why) {
    if (wrong) {
      throw new ParameterException(spec.commandLine(), why);
    }
  }

  private View side(String word) {
    List<String> known = Arrays.stream(View.values()).map(View::key).toList();
    return Arrays.stream(View.values())
        .filter(one -> one.key().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new ParameterException(spec.commandLine(), UnknownWord.of("--view", word, known)));
  }

  /** Whether a file of this form is a picture of the model. */
  boolean isAskedFor(String form) {
    return form.equals("gif") || view.isPresent();
  }

  /** Writes it; gives the exit code. */
  int write(
      ProjectFile file, Project project, Scene scene, String form, Path output, Terminal terminal)
      throws IOException {
    LitFrame lit = LitFrame.of(project, scene);
    View side = view.map(this::side).orElseGet(() -> ModelPicture.fullest(lit));
    if (Sides.count(lit.lamps(), side) == 0) {
      terminal.refuse(file.shown() + ": no lamp is placed in the view " + side.key());
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    ModelPicture model =
        ModelPicture.of(lit, side, photograph(file.path(), project, side, terminal), !day);
    if (form.equals("png")) {
      BufferedImage image = model.still();
      WholeFile.write(output, out -> ImageIO.write(image, "png", out));
    } else {
      write(new SceneMovie(model, lit.table(), seconds.orElse(MOST_SECONDS)), output, terminal);
    }
    return ExitCode.DONE;
  }

  private void write(SceneMovie movie, Path output, Terminal terminal) throws IOException {
    if (movie.isCut() && seconds.isEmpty()) {
      terminal
          .err()
          .printf(
              Locale.ROOT,
              "The first %.0f s of the scene are shown; it is longer.%n",
              MOST_SECONDS);
    }
    FlashCaution flashes = movie.flashes();
    boolean dimmed = !flashes.passes() && !fullLight;
    if (!flashes.passes()) {
      int most = Math.max(flashes.general().flashes(), flashes.red().flashes());
      terminal
          .err()
          .printf(
              Locale.ROOT,
              "Caution: the picture flashes %d times in one second at full light; %d are the most"
                  + " that the flash caution has (W3C WCAG 2.2, 2.3.1). %s%n",
              most,
              FlashCaution.MOST_FLASHES,
              dimmed
                  ? "It is dimmed; --full-light leaves it as it is."
                  : "Say so wherever others see it.");
    }
    float most = dimmed ? Glow.DIMMED_MOST : Float.MAX_VALUE;
    WholeFile.write(
        output,
        out -> movie.write(most, done -> terminal.progress("picture", done, movie.frames()), out));
    terminal.endProgress();
  }

  private static Optional<BufferedImage> photograph(
      Path project, Project of, View side, Terminal terminal) throws IOException {
    Optional<Path> file =
        of.picture(side)
            .flatMap(
                picture ->
                    Optional.ofNullable(project.toAbsolutePath().getParent()).map(picture::in));
    if (file.isEmpty()) {
      return Optional.empty();
    }
    Path photograph = file.get();
    Path folder = project.toAbsolutePath().getParent();
    if (PictureFile.size(photograph).isPresent()
        && folder != null
        && !ProjectFolder.leadsOut(folder, photograph)) {
      Optional<BufferedImage> image = Optional.ofNullable(ImageIO.read(photograph.toFile()));
      if (image.isPresent()) {
        return image;
      }
    }
    terminal
        .err()
        .println(
            "The model is drawn, since its picture can't be read: "
                + ProjectFile.shown(photograph));
    return Optional.empty();
  }
}
