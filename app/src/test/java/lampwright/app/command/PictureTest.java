package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.PixelType;
import lampwright.exporters.picture.StripChart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** Strip charts, read by the image and XML readers of the Java library. */
class PictureTest {
  /**
   * Where the first lamp's strips begin: a lamp of one pixel has a row of 30, and 16 to the next.
   */
  private static final int FIRST = 78;

  private static final int SCALE = 2;

  // Three pixels that are red, green and blue alone for a second, then dark for one.
  private static final String PROJECT =
      """
      {"lampwright": 1, "name": "Colours",
       "rig": {"controller": "other",
         "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 3}],
         "lamps": [{"id": "r", "pixels": [{"chain": "c", "count": 1}]},
                   {"id": "g", "pixels": [{"chain": "c", "from": 1, "count": 1}]},
                   {"id": "b", "pixels": [{"chain": "c", "from": 2, "count": 1}]}]},
       "scenes": [{"id": "s", "lengthMs": 2000, "framesPerSecond": 50, "tracks": [
         {"lamps": ["r"], "cues": [{"lengthMs": 1000, "pattern":
           {"kind": "steady", "colour": {"drive": {"r": 1}}}}]},
         {"lamps": ["g"], "cues": [{"lengthMs": 1000, "pattern":
           {"kind": "steady", "colour": {"drive": {"g": 1}}}}]},
         {"lamps": ["b"], "cues": [{"lengthMs": 1000, "pattern":
           {"kind": "steady", "colour": {"drive": {"b": 1}}}}]}]}]}
      """;

  @TempDir Path folder;

  private Path project(String text) throws IOException {
    return Files.writeString(folder.resolve("p.lampwright.json"), text);
  }

  private static Document parsed(Path svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory.newDocumentBuilder().parse(svg.toFile());
  }

  private static int at(BufferedImage image, double seconds, double whole, int y) {
    double x = StripChart.LEFT + seconds / whole * StripChart.STRIP_WIDTH;
    return image.getRGB((int) (SCALE * x), SCALE * y) & 0xFFFFFF;
  }

  /**
   * CIE x and y of a screen colour: IEC 61966-2-1, its curve and matrix, typed from the standard.
   */
  private static double[] xy(int rgb) {
    double[] v = new double[3];
    for (int i = 0; i < 3; i++) {
      double code = (rgb >> (16 - 8 * i) & 0xFF) / 255.0;
      v[i] = code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }
    double x = 0.4124 * v[0] + 0.3576 * v[1] + 0.1805 * v[2];
    double y = 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2];
    double z = 0.0193 * v[0] + 0.1192 * v[1] + 0.9505 * v[2];
    return new double[] {x / (x + y + z), y / (x + y + z)};
  }

  /** The hue of a chromaticity: its angle around D65 (0.3127, 0.3290), degrees. */
  private static double hue(double x, double y) {
    return Math.toDegrees(Math.atan2(y - 0.3290, x - 0.3127));
  }

  @Test
  void pixelsOfAPngHaveTheEmittersHueWhereTheyAreLitAndAreBlackWhereNot() throws Exception {
    Path png = folder.resolve("out/colours.png");
    Run run = Run.of("picture", project(PROJECT), "--to", png);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    BufferedImage image = ImageIO.read(png.toFile());
    PixelType type = BuiltInPixelTypes.find("ws2812b").orElseThrow();
    int row = FIRST + 8;
    List<Double> hues = new ArrayList<>();
    for (int lamp = 0; lamp < 3; lamp++, row += 30 + 16) {
      double[] shown = xy(at(image, 0.5, 2, row));
      hues.add(hue(shown[0], shown[1]));
      assertThat(at(image, 1.5, 2, row)).isZero();
      // The last place that is lit and the first that is not.
      assertThat(at(image, 0.9985, 2, row)).isNotZero();
      assertThat(at(image, 1.0015, 2, row)).isZero();
    }
    int i = 0;
    for (EmitterKind kind : List.of(EmitterKind.RED, EmitterKind.GREEN, EmitterKind.BLUE)) {
      var emitter = type.emitters().get(kind).light().chromaticity();
      assertThat(hues.get(i++))
          .as("%s", kind)
          .isCloseTo(hue(emitter.x(), emitter.y()), within(3.0));
    }
  }

  @Test
  void svgHasEveryLampTheScaleAndTheFlashes() throws Exception {
    Path svg = folder.resolve("call-out.svg");
    Run run = Run.of("picture", sample("mountain-rescue"), "--scene", "call-out", "--to", svg);
    assertThat(run.code()).isZero();
    NodeList texts = parsed(svg).getElementsByTagName("text");
    List<String> words = new ArrayList<>();
    for (int i = 0; i < texts.getLength(); i++) {
      words.add(texts.item(i).getTextContent());
    }
    assertThat(words)
        .contains("Light bar, left", "Rear fog lamp", "0 s", "6 s", "6 s, 50 frames/s, repeats")
        // Two flashes every half second, as the sample has them.
        .contains("4 flashes in one second; limit 3")
        .anyMatch(text -> text.contains("photosensitive epilepsy"));
  }

  @Test
  void namesDoNoHarm() throws Exception {
    String hostile = "<script>&\u202E\u0007\"'";
    Path svg = folder.resolve("p.svg");
    Path file =
        project(
            PROJECT
                .replace("\"id\": \"r\"", "\"id\": \"r\", \"name\": \"LAMP\"")
                .replace("Colours", "LAMP")
                .replace("LAMP", hostile.replace("\"", "\\\"").replace("\u0007", "\\u0007")));
    assertThat(Run.of("picture", file, "--to", svg).code()).isZero();
    assertThat(parsed(svg).getElementsByTagName("script").getLength()).isZero();
    assertThat(Files.readString(svg)).doesNotContain("\u202E", "\u0007");
  }

  @Test
  void wrongWordsAndFilesAreRefusedAndNothingIsWritten() throws IOException {
    Path file = project(PROJECT);
    Run kind = Run.of("picture", file, "--to", folder.resolve("p.bmp"));
    assertThat(kind.code()).isEqualTo(2);
    assertThat(kind.err()).contains("must end with .png, .svg or .gif");
    Run scene = Run.of("picture", file, "--scene", "t", "--to", folder.resolve("p.png"));
    assertThat(scene.code()).isEqualTo(2);
    assertThat(scene.err()).contains("--scene");
    Path none = project(PROJECT.replaceAll("(?s)\"scenes\": .*", "\"scenes\": []}"));
    Run empty = Run.of("picture", none, "--to", folder.resolve("p.png"));
    assertThat(empty.code()).isEqualTo(1);
    assertThat(folder.resolve("p.png")).doesNotExist();
    Run place = Run.of("picture", file, "--to", file.resolve("p.svg"));
    assertThat(place.code()).isIn(1, 3);
  }
}
