package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Models with their lamps lit, read by the image readers of the Java library. */
class ModelPictureTest {
  private static final String GIF = "javax_imageio_gif_image_1.0";

  // Of the whole picture, by which the drawing is as far from its edges.
  private static final int MARGIN = 24;

  // Red for a second, then dark; green the other way round; both are placed by hand.
  private static final String PROJECT =
      """
      {"lampwright": 1, "name": "Colours", "model": "car",
       "rig": {"controller": "other",
         "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 3}],
         "lamps": [{"id": "r", "pixels": [{"chain": "c", "count": 1}],
                    "place": {"view": "side", "x": 0.25, "y": 0.5, "size": 0.03}},
                   {"id": "g", "pixels": [{"chain": "c", "from": 1, "count": 1}],
                    "place": {"view": "side", "x": 0.75, "y": 0.5, "size": 0.03}}]},
       "scenes": [{"id": "s", "lengthMs": 2000, "framesPerSecond": FPS, "loop": true, "tracks": [
         {"lamps": ["r"], "cues": [{"lengthMs": 1000, "pattern":
           {"kind": "steady", "colour": {"drive": {"r": 1}}}}]},
         {"lamps": ["g"], "cues": [{"startMs": 1000, "lengthMs": 1000, "pattern":
           {"kind": "steady", "colour": {"drive": {"g": 1}}}}]}]}]}
      """;

  /**
   * A picture of the file as a viewer composes it.
   *
   * @param start hundredths of a second
   */
  private record Shown(int start, int delay, BufferedImage image) {}

  @TempDir Path folder;

  private Path project(String text) throws IOException {
    return Files.writeString(folder.resolve("p.lampwright.json"), text);
  }

  private Path project(int framesPerSecond) throws IOException {
    return project(PROJECT.replace("FPS", Integer.toString(framesPerSecond)));
  }

  private static List<Shown> shown(Path gif) throws IOException {
    List<Shown> all = new ArrayList<>();
    ImageReader reader = ImageIO.getImageReadersByFormatName("gif").next();
    try (ImageInputStream in = ImageIO.createImageInputStream(gif.toFile())) {
      reader.setInput(in);
      BufferedImage whole =
          new BufferedImage(reader.getWidth(0), reader.getHeight(0), BufferedImage.TYPE_INT_RGB);
      int start = 0;
      for (int i = 0; i < reader.getNumImages(true); i++) {
        Node root = reader.getImageMetadata(i).getAsTree(GIF);
        IIOMetadataNode place = node(root, "ImageDescriptor");
        Graphics2D g = whole.createGraphics();
        g.drawImage(
            reader.read(i),
            number(place, "imageLeftPosition"),
            number(place, "imageTopPosition"),
            null);
        g.dispose();
        IIOMetadataNode control = node(root, "GraphicControlExtension");
        assertThat(control.getAttribute("disposalMethod")).isEqualTo("doNotDispose");
        BufferedImage copy =
            new BufferedImage(whole.getWidth(), whole.getHeight(), BufferedImage.TYPE_INT_RGB);
        whole.copyData(copy.getRaster());
        all.add(new Shown(start, number(control, "delayTime"), copy));
        start += number(control, "delayTime");
      }
    } finally {
      reader.dispose();
    }
    return all;
  }

  private static int number(IIOMetadataNode node, String attribute) {
    return Integer.parseInt(node.getAttribute(attribute));
  }

  private static IIOMetadataNode node(Node root, String name) {
    NodeList found = ((IIOMetadataNode) root).getElementsByTagName(name);
    return (IIOMetadataNode) found.item(0);
  }

  private static boolean loops(Path gif) throws IOException {
    // CompuServe, GIF89a, section 26: an application extension is 21 FF 0B and its name.
    return new String(Files.readAllBytes(gif), StandardCharsets.ISO_8859_1)
        .contains("!\u00FF\u000BNETSCAPE2.0\u0003\u0001\u0000\u0000\u0000");
  }

  private static Color at(BufferedImage image, double x, double y) {
    return new Color(
        image.getRGB(
            (int) Math.round(MARGIN + x * (image.getWidth() - 2 * MARGIN)),
            (int) Math.round(MARGIN + y * (image.getHeight() - 2 * MARGIN))));
  }

  /** Each frame begins at most half a hundredth of a second early or late, whatever the rate. */
  @ParameterizedTest
  @ValueSource(ints = {24, 25, 30, 50, 60, 100})
  void lampsTurnAtTheirInstantsAndTheDelaysAddUpToTheLoop(int framesPerSecond) throws IOException {
    Path gif = folder.resolve("out/colours.gif");
    Run run = Run.of("picture", project(framesPerSecond), "--to", gif);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    List<Shown> shown = shown(gif);
    assertThat(loops(gif)).isTrue();
    assertThat(shown).hasSize(2);
    assertThat(shown.get(0).delay()).isEqualTo(100);
    assertThat(shown.get(1).delay()).isEqualTo(100);
    Color red = at(shown.get(0).image(), 0.25, 0.5);
    Color green = at(shown.get(1).image(), 0.75, 0.5);
    assertThat(red.getRed()).isGreaterThan(200);
    assertThat(red.getGreen()).isLessThan(60);
    assertThat(red.getBlue()).isLessThan(60);
    assertThat(green.getGreen()).isGreaterThan(200);
    assertThat(green.getRed()).isLessThan(60);
    // An unlit pixel is dark, whatever the body below it.
    assertThat(at(shown.get(1).image(), 0.25, 0.5).getRed()).isLessThan(30);
    assertThat(at(shown.get(0).image(), 0.75, 0.5).getGreen()).isLessThan(30);
  }

  /** At 60 and 100 frames a second some come too soon for the format; the loop stays as long. */
  @ParameterizedTest
  @CsvSource({"60, 200", "100, 200", "50, 200", "7, 200"})
  void whatComesTooSoonIsLeftOut(int framesPerSecond, int hundredths) throws IOException {
    Path gif = folder.resolve("fade.gif");
    String fade =
        PROJECT
            .replace("FPS", Integer.toString(framesPerSecond))
            .replace(
                "{\"kind\": \"steady\", \"colour\": {\"drive\": {\"r\": 1}}}",
                "{\"kind\": \"fade\", \"from\": {\"drive\": {}}, \"to\": {\"drive\": {\"r\": 1}}}");
    Run run = Run.of("picture", project(fade), "--to", gif);
    assertThat(run.code()).as(run.err()).isZero();
    List<Shown> shown = shown(gif);
    assertThat(shown.stream().mapToInt(Shown::delay).sum()).isEqualTo(hundredths);
    assertThat(shown).allSatisfy(one -> assertThat(one.delay()).isGreaterThanOrEqualTo(2));
    // All that differ to the eye are there: a fade of a second is not a jump.
    assertThat(shown).hasSizeGreaterThan(Math.min(framesPerSecond, 50) / 2);
    assertThat(shown)
        .allSatisfy(
            one -> {
              double frame = one.start() * framesPerSecond / 100.0;
              assertThat(Math.abs(frame - Math.rint(frame)) / framesPerSecond)
                  .isLessThanOrEqualTo(0.005 + 1e-9);
            });
  }

  @Test
  void whatFlashesTooOftenIsDimmedUnlessAskedFor() throws IOException {
    // Five times a second.
    String flashing =
        PROJECT
            .replace("FPS", "50")
            .replace(
                "{\"kind\": \"steady\", \"colour\": {\"drive\": {\"g\": 1}}}",
                "{\"kind\": \"flash\", \"colour\": {\"drive\": {\"g\": 1}}, \"flashes\": 5,"
                    + " \"onMs\": 100, \"gapMs\": 100, \"offMs\": 100}");
    Path file = project(flashing);
    Path gif = folder.resolve("flash.gif");
    Run dimmed = Run.of("picture", file, "--to", gif);
    assertThat(dimmed.code()).as(dimmed.err()).isZero();
    assertThat(dimmed.err()).contains("5 times in one second", "2.3.1", "It is dimmed");
    assertThat(shown(gif))
        .allSatisfy(one -> assertThat(at(one.image(), 0.75, 0.5).getGreen()).isLessThan(80));
    Run full = Run.of("picture", file, "--to", gif, "--full-light");
    assertThat(full.err()).contains("5 times in one second").doesNotContain("dimmed");
    assertThat(shown(gif))
        .anySatisfy(one -> assertThat(at(one.image(), 0.75, 0.5).getGreen()).isGreaterThan(200));
  }

  @Test
  void aStillShowsTheBrightestFrameOverThePhotographOfTheModel() throws IOException {
    BufferedImage photograph = new BufferedImage(400, 200, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = photograph.createGraphics();
    g.setColor(new Color(40, 120, 200));
    g.fillRect(0, 0, 400, 200);
    g.dispose();
    ImageIO.write(photograph, "png", folder.resolve("car.png").toFile());
    String own =
        PROJECT
            .replace("FPS", "25")
            .replace(
                "\"rig\":",
                "\"pictures\": [{\"view\": \"side\", \"file\": \"car.png\"}], \"rig\":");
    Path file = project(own);
    Path png = folder.resolve("still.png");
    Run run = Run.of("picture", file, "--view", "side", "--day", "--to", png);
    assertThat(run.err()).isEmpty();
    BufferedImage image = ImageIO.read(png.toFile());
    // Twice as wide as high, between margins.
    assertThat(image.getWidth()).isEqualTo(720);
    assertThat(image.getHeight()).isEqualTo((720 - 2 * MARGIN) / 2 + 2 * MARGIN);
    assertThat(at(image, 0.02, 0.02)).isEqualTo(new Color(40, 120, 200));
    // Of two as bright the first.
    assertThat(at(image, 0.25, 0.5).getRed()).isGreaterThan(200);

    Files.writeString(folder.resolve("car.png"), "no picture");
    Run broken = Run.of("picture", file, "--view", "side", "--to", png);
    assertThat(broken.code()).isZero();
    assertThat(broken.err()).contains("car.png", "can't be read");
  }

  @Test
  void samplesLoopAndLongScenesAreCutAloud() throws IOException {
    Path gif = folder.resolve("tractor.gif");
    Run run = Run.of("picture", sample("recovery-tractor"), "--seconds", "0.5", "--to", gif);
    assertThat(run.code()).isZero();
    assertThat(shown(gif).stream().mapToInt(Shown::delay).sum()).isEqualTo(50);
    String once = PROJECT.replace("FPS", "2").replace("\"loop\": true", "\"loop\": false");
    assertThat(Run.of("picture", project(once), "--to", gif).code()).isZero();
    assertThat(loops(gif)).isFalse();
    String hours =
        PROJECT.replace("FPS", "2").replace("\"lengthMs\": 2000", "\"lengthMs\": 7200000");
    Run cut = Run.of("picture", project(hours), "--to", gif);
    assertThat(cut.err()).contains("first 60 s");
    assertThat(shown(gif).stream().mapToInt(Shown::delay).sum()).isEqualTo(6000);
  }

  @ParameterizedTest
  @CsvSource({
    "p.svg, --view side, --view: needs a *.png or a *.gif",
    "p.png, --day, --day: needs",
    "p.png, --seconds 3, --seconds: needs a *.gif",
    "p.png, --full-light, --full-light: needs a *.gif",
    "p.gif, --seconds 0, must be 0.1 to 60",
    "p.gif, --seconds 61, must be 0.1 to 60",
    "p.gif, --seconds NaN, must be 0.1 to 60",
    "p.gif, --view left, --view",
    "p.gif, --view sid, side",
  })
  void optionsThatDoNotFitAreRefusedAndNothingIsWritten(String name, String options, String why)
      throws IOException {
    List<Object> words =
        new ArrayList<>(List.of("picture", project(25), "--to", folder.resolve(name)));
    words.addAll(List.of(options.split(" ")));
    Run run = Run.of(words.toArray());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains(why);
    assertThat(folder.resolve(name)).doesNotExist();
  }

  @Test
  void aSideWithoutLampsIsRefused() throws IOException {
    Path gif = folder.resolve("p.gif");
    Run run = Run.of("picture", project(25), "--view", "front", "--to", gif);
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).contains("no lamp is placed in the view front");
    assertThat(gif).doesNotExist();
  }

  /** The colours of the day and the night are those of the window's style sheets. */
  @Test
  void dayAndNightDiffer() throws IOException {
    Path day = folder.resolve("day.png");
    Path night = folder.resolve("night.png");
    Run.of("picture", project(25), "--view", "side", "--day", "--to", day);
    Run.of("picture", project(25), "--view", "side", "--to", night);
    // The corner is the ground: -lw-wash of palette-day.css and palette-night.css.
    assertThat(new Color(ImageIO.read(day.toFile()).getRGB(1, 1))).isEqualTo(new Color(0xC9D0D0));
    assertThat(new Color(ImageIO.read(night.toFile()).getRGB(1, 1))).isEqualTo(new Color(0x0B1320));
    assertThat(at(ImageIO.read(night.toFile()), 0.25, 0.5).getRed()).isCloseTo(255, within(55));
  }
}
