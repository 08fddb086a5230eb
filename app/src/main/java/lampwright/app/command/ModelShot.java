package lampwright.app.command;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import lampwright.app.picture.LitFrame;
import lampwright.app.picture.ModelPicture;
import lampwright.app.picture.SceneMovie;
import lampwright.app.picture.Sides;
import lampwright.app.workshop.disk.ModelPhotograph;
import lampwright.engine.check.SafeText;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Picture;
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
        seconds.filter(s -> !(s >= 0.1 && s <= SceneMovie.MOST_SECONDS)).isPresent(),
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
      ProjectFile file,
      Project project,
      Scene scene,
      String form,
      OutputFile output,
      Terminal terminal)
      throws IOException {
    LitFrame lit = LitFrame.of(project, scene);
    View side = view.map(this::side).orElseGet(() -> ModelPicture.fullest(lit));
    if (Sides.count(lit.lamps(), side) == 0) {
      terminal.refuse(file.shown() + ": no lamp is placed in the view " + side.key());
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    ModelPicture model =
        ModelPicture.of(lit, side, photograph(file, project, side, terminal), !day);
    if (form.equals("png")) {
      BufferedImage image = model.still();
      WholeFile.write(output.path(), out -> ImageIO.write(image, "png", out));
    } else {
      write(
          new SceneMovie(model, lit.table(), seconds.orElse(SceneMovie.MOST_SECONDS)),
          output.path(),
          terminal);
    }
    output.report(terminal);
    return ExitCode.DONE;
  }

  private void write(SceneMovie movie, Path output, Terminal terminal) throws IOException {
    if (movie.isCut() && seconds.isEmpty()) {
      terminal
          .err()
          .printf(
              Locale.ROOT,
              "The first %.0f s of the scene are shown; it is longer.%n",
              SceneMovie.MOST_SECONDS);
    }
    FlashCaution flashes = movie.flashes();
    boolean dimmed = !flashes.passes() && !fullLight;
    if (!flashes.passes()) {
      terminal
          .err()
          .printf(
              Locale.ROOT,
              "Caution: the picture flashes %d times in one second at full light; %d are the most"
                  + " that the flash caution has (W3C WCAG 2.2, 2.3.1). %s%n",
              flashes.most(),
              FlashCaution.MOST_FLASHES,
              dimmed
                  ? "It is dimmed; --full-light leaves it as it is."
                  : "Say so wherever others see it.");
    }
    float most = SceneMovie.mostLight(dimmed);
    WholeFile.write(
        output,
        out -> movie.write(most, done -> terminal.progress("picture", done, movie.frames()), out));
    terminal.endProgress();
  }

  private static Optional<BufferedImage> photograph(
      ProjectFile file, Project project, View side, Terminal terminal) {
    Optional<Picture> picture = project.picture(side);
    Optional<BufferedImage> image = picture.flatMap(own -> ModelPhotograph.read(file.path(), own));
    if (picture.isPresent() && image.isEmpty()) {
      terminal
          .err()
          .println(
              "The model is drawn, since its picture can't be read: "
                  + SafeText.text(picture.get().file(), SafeText.MAX_MESSAGE));
    }
    return image;
  }
}
