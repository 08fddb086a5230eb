package lampwright.app.command;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import javax.imageio.ImageIO;
import lampwright.app.picture.RasterPainter;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.scene.Scene;
import lampwright.exporters.picture.ChartInk;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.StripChart;
import lampwright.exporters.picture.SvgPainter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes pictures of scenes. */
@Command(
    name = "picture",
    mixinStandardHelpOptions = true,
    description = {
      "A *.png or *.svg has the strip chart of a scene: a row for each lamp, its pixels one below the other, time to"
          + " the right with a scale. A second in which a lamp flashes more often than the flash"
          + " caution has it is marked.",
      "A *.gif shows the model with its lamps lit, moving; with --view, a *.png shows it in the"
          + " scene's brightest frame.",
      "The colours are those of the exported bytes as a screen shows them."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright picture samples/harbour-dusk.lampwright.json --to dusk.png",
      "  lampwright picture samples/recovery-tractor.lampwright.json --scene working --to working.svg",
      "  lampwright picture samples/recovery-tractor.lampwright.json --view rear --to tractor.gif"
    })
final class PictureCommand implements Callable<Integer> {
  /** Pixels of a PNG for one of the drawing: sharp on screens of 200 %, and in print. */
  private static final int PNG_SCALE = 2;

  private static final String TYPE = "/lampwright/app/fonts/ibm-plex-sans-condensed-500.ttf";

  private final Terminal terminal;

  @Mixin private ProjectFile file;
  @Mixin private OutputFile output;
  @Spec private CommandSpec spec;

  @Option(
      names = "--scene",
      paramLabel = "ID",
      description = "the scene. Default: the first of the project")
  private Optional<String> wanted = Optional.empty();

  @Mixin private ModelShot shot;

  PictureCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    String form = output.form("png", "svg", "gif");
    shot.check(form);
    Optional<Project> read = file.read(terminal);
    if (read.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Project project = read.get();
    Optional<Scene> scene = SceneChoice.one(wanted, file, project, spec, terminal);
    if (scene.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    if (shot.isAskedFor(form)) {
      return shot.write(file, project, scene.get(), form, output, terminal);
    }
    DisplayList chart =
        StripChart.of(project.name(), FrameTable.of(project.rig(), scene.get())).draw();
    if (form.equals("png")) {
      BufferedImage image =
          RasterPainter.paint(
              chart, (ink, area) -> Color.decode(PictureCommand.css(ink)), type(), PNG_SCALE);
      WholeFile.write(output.path(), out -> ImageIO.write(image, "png", out));
    } else {
      WholeFile.write(output.path(), SvgPainter.write(chart, PictureCommand::css));
    }
    output.report(terminal);
    return ExitCode.DONE;
  }

  private static String css(Ink ink) {
    return ((ChartInk) ink).css();
  }

  private static Font type() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(PictureCommand.class.getResourceAsStream(TYPE), TYPE)) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (FontFormatException damaged) {
      throw new IOException(TYPE + ": no font", damaged);
    }
  }
}
