package lampwright.app.command;

import static java.nio.charset.StandardCharsets.UTF_8;
import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import lampwright.exporters.OutsideTools;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.SAXException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/**
 * Build sheets, read by poppler's pdftotext, pdfinfo and pdffonts and judged by the Nu HTML
 * checker. What has to be on them is read from the project files by a JSON library of its own.
 */
class SheetTest {
  private static final String LAMPS =
      """
      {"lampwright": 1, "name": "NAME",
       "rig": {"controller": "rp2040",
         "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 300}],
         "lamps": [LAMPS]},
       "scenes": []}
      """;

  @TempDir Path folder;

  private static String words(String text) {
    return text.replaceAll("[\\s\\u00a0]+", " ");
  }

  private static String packed(String text) {
    return text.replaceAll("[\\s\\u00a0]+", "");
  }

  private String tool(String name, Path pdf, String... options) {
    String[] words = new String[options.length + (name.equals("pdftotext") ? 2 : 1)];
    System.arraycopy(options, 0, words, 0, options.length);
    words[options.length] = pdf.toString();
    if (name.equals("pdftotext")) {
      words[words.length - 1] = "-";
    }
    return new String(
        OutsideTools.onThisMachine().find(name, "poppler-utils").run(folder, words).quietOut(),
        UTF_8);
  }

  private Path written(Path project, String ending) {
    Path file = folder.resolve("out/sheet" + ending);
    Run run = Run.of("sheet", project, "--to", file);
    assertThat(run.err()).isEmpty();
    assertThat(run.out().strip()).isEqualTo(file.toString());
    assertThat(run.code()).isZero();
    return file;
  }

  private Path project(String name, String lamps) throws IOException {
    return Files.writeString(
        folder.resolve("p.lampwright.json"), LAMPS.replace("LAMPS", lamps).replace("NAME", name));
  }

  private static String lamp(String id, String name, int from, int count) {
    return "{\"id\": \"%s\", \"name\": \"%s\", \"pixels\": [{\"chain\": \"c\", \"from\": %d, \"count\": %d}]}"
        .formatted(id, name, from, count);
  }

  private static void assertValid(Path html) throws IOException, SAXException {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.TEXT);
    validator.setNoLangDetect(true);
    assertThat(validator.validate(html)).contains("No errors found");
  }

  @ParameterizedTest
  @ValueSource(strings = {"bench-rgbw", "recovery-tractor", "mountain-rescue", "harbour-dusk"})
  void sheetsOfSamplesHaveEveryLampPixelAndFinding(String name) throws Exception {
    Path project = sample(name);
    Path pdf = written(project, ".pdf");
    // Cell by cell; where a line was broken does not count.
    String text = packed(tool("pdftotext", pdf, "-raw"));
    String layout = tool("pdftotext", pdf, "-layout");
    JsonNode rig = new ObjectMapper().readTree(Files.readString(project)).path("rig");
    for (JsonNode lamp : rig.path("lamps")) {
      assertThat(text)
          .contains(packed(lamp.path("name").asString() + "(" + lamp.path("id").asString() + ")"));
    }
    for (JsonNode chain : rig.path("chains")) {
      Set<Integer> pixels = new TreeSet<>();
      for (int i = 0; i < chain.path("pixels").asInt(); i++) {
        pixels.add(i);
      }
      String title = chain.path("id").asString() + ": " + pixels.size() + " pixels";
      assertThat(words(layout)).contains(title);
      String after = layout.substring(layout.indexOf(title.substring(0, title.indexOf(' '))));
      Set<Integer> found = new TreeSet<>();
      after
          .lines()
          .filter(line -> line.matches(" *\\d+(, \\d+)*   .*"))
          .map(line -> line.strip().split("   ", 2)[0])
          .takeWhile(numbers -> found.size() < pixels.size())
          .forEach(
              numbers -> {
                for (String number : numbers.split(", ", -1)) {
                  found.add(Integer.parseInt(number));
                }
              });
      assertThat(found).isEqualTo(pixels);
    }
    JsonNode check =
        new ObjectMapper().readTree(Run.of("check", project, "--json").out()).path("findings");
    for (JsonNode finding : check) {
      assertThat(finding.path("finding").asString()).isNotEmpty();
      assertThat(text).contains(packed(finding.path("finding").asString()));
      assertThat(text).contains(packed(finding.path("remedy").asString()));
    }
    assertThat(words(layout))
        .contains("Continuity, power off", "Polarity:", "current limit", "wheels off the ground")
        .contains("Bench test first", "photosensitive epilepsy", "licensed practice decide");
    assertThat(tool("pdffonts", pdf).lines().skip(2)).isNotEmpty().allMatch(l -> embedded(l));
    assertValid(written(project, ".html"));
  }

  // Columns of pdffonts: name, type, encoding, emb, sub, uni, object.
  private static boolean embedded(String line) {
    return line.matches(".* yes yes yes +\\d+ +\\d+");
  }

  @Test
  void benchTestFitsOnePageAndHasTheSameBytesEachTime() throws IOException {
    Path pdf = written(sample("bench-rgbw"), ".pdf");
    assertThat(tool("pdfinfo", pdf)).containsPattern("Pages: +1\n").doesNotContain("Date");
    byte[] first = Files.readAllBytes(pdf);
    assertThat(Files.readAllBytes(written(sample("bench-rgbw"), ".pdf"))).isEqualTo(first);
    byte[] html = Files.readAllBytes(written(sample("bench-rgbw"), ".html"));
    assertThat(Files.readAllBytes(written(sample("bench-rgbw"), ".html"))).isEqualTo(html);
  }

  @Test
  void lettersOfAllAlphabetsAppear() throws Exception {
    List<String> names =
        List.of("Маяк", "Φάρος", "灯台の灯", "등대", "Leuchtfeuer größer", "Đèn hậu", "\u0bb5\u0bbf");
    StringBuilder lamps = new StringBuilder();
    for (String name : names) {
      int i = names.indexOf(name);
      lamps.append(i == 0 ? "" : ",").append(lamp("l" + i, name, 2 * i, 2));
    }
    // From right to left in the page; pdftotext gives the order of reading, between marks.
    lamps.append(",").append(lamp("h", "\u05d0\u05d5\u05e8 \u05d0\u05d3\u05d5\u05dd", 90, 2));
    // A tractor, in no font of ours.
    lamps.append(",").append(lamp("t", "T\ud83d\ude9c", 100, 1));
    Path file = project("Огни", lamps.toString());
    Path pdf = written(file, ".pdf");
    String text = tool("pdftotext", pdf);
    assertThat(text).contains(names.subList(0, 6)).contains("Огни", "U+1F69C");
    assertThat(text.replaceAll("[\u202a-\u202e]", ""))
        .contains("\u05d0\u05d5\u05e8 \u05d0\u05d3\u05d5\u05dd");
    assertThat(tool("pdffonts", pdf).lines().skip(2)).allMatch(SheetTest::embedded);
    String html = Files.readString(written(file, ".html"));
    assertThat(html).contains(names).contains("\ud83d\ude9c").doesNotContain("http://www.x");
    assertValid(folder.resolve("out/sheet.html"));
  }

  @Test
  void partsOfLampsAndLongRunsAreNamed() throws IOException {
    String lamps =
        lamp("strip", "", 100, 200)
            + ",{\"id\": \"two\", \"pixels\": [{\"chain\": \"c\", \"from\": 5, \"count\": 2},"
            + "{\"chain\": \"c\", \"from\": 0, \"count\": 1}]}";
    String text = words(tool("pdftotext", written(project("n", lamps), ".pdf"), "-layout"));
    assertThat(text)
        .contains("0 two pixel 3 of 3", "1, 2, 3, 4 not used", "5, 6 two pixels 1 to 2 of 3")
        .contains("7 to 99 (93 pixels) not used", "100 to 299 (200 pixels) strip all");
  }

  @Test
  void htmlNeedsNoOtherFile() throws IOException {
    String html = Files.readString(written(sample("recovery-tractor"), ".html"));
    assertThat(html)
        .startsWith("<!DOCTYPE html>\n<html lang=\"en\"")
        .doesNotContain("src=", "href=", "url(", "@import", "<script");
    // Black on white: no meaning by a colour.
    assertThat(html.replaceAll("#000|#fff|#666666|#777|#FF[0-9A-F]{4}|&#39;", ""))
        .doesNotContain("#");
  }

  @Test
  void wrongWordsAndFilesAreRefusedAndNothingIsWritten() throws IOException {
    Path file = project("n", lamp("l", "L", 0, 1));
    Run ending = Run.of("sheet", file, "--to", folder.resolve("s.doc"));
    assertThat(ending.code()).isEqualTo(2);
    assertThat(ending.err()).contains("must end with .html or .pdf");
    assertThat(Run.of("sheet", file).code()).isEqualTo(2);
    Path faulty = project("n", lamp("l", "L", 299, 2));
    Run errors = Run.of("sheet", faulty, "--to", folder.resolve("s.pdf"));
    assertThat(errors.code()).isEqualTo(1);
    assertThat(errors.err()).contains("rig.lamps[0]");
    Run missing = Run.of("sheet", folder.resolve("none"), "--to", folder.resolve("s.pdf"));
    assertThat(missing.code()).isEqualTo(3);
    assertThat(folder.resolve("s.pdf")).doesNotExist();
    Path good = project("n", lamp("l", "L", 0, 1));
    Run place = Run.of("sheet", good, "--to", good.resolve("s.pdf"));
    assertThat(place.code()).isEqualTo(3);
  }

  @Test
  void outputsAloneMakeASheetToo() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("p.lampwright.json"),
            "{\"lampwright\": 1, \"rig\": {\"outputs\": [{\"id\": \"o\"}]}, \"scenes\": []}");
    assertThat(words(tool("pdftotext", written(file, ".pdf"), "-layout")))
        .contains("o not used controller", "Every LED of an output")
        .doesNotContain("Chains, in data order");
  }
}
