package lampwright.app.command;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.util.stream.Collectors.joining;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.SAXParserFactory;
import lampwright.exporters.OutsideTools;
import nu.validator.htmlparser.common.XmlViolationPolicy;
import nu.validator.htmlparser.sax.HtmlParser;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/**
 * Text that was chosen to do harm, through every output. What is written for a harmless name is
 * compared with it: everything but the name must be the same. The judges are Unicode's classes, the
 * C preprocessor and compiler, a CommonMark parser and a JSON parser.
 */
class HostileTextTest {
  /** Names, each with one kind of harm in it; the last is all of them. */
  enum Hostile {
    FORMULA("=cmd|' /C calc'!A0"),
    FORMULA_PLUS("+1+1"),
    FORMULA_MINUS("-2+3"),
    FORMULA_AT("@SUM(1)"),
    FORMULA_TAB("\t=1"),
    FORMULA_RETURN("\r=1"),
    LINES("a\nb\r\nc\u000bd\fe\u0085f\u2028g\u2029h"),
    // As a line of a .properties file, a Makefile, Markdown, C.
    NEW_FIELD("a\nname=evil\narchitectures=avr\n\t$(shell id)\n# Title\n#include \"x\"\n"),
    BIDI("\u202eevil\u202c \u2067turned\u2069 \u200f\u061c\u202a\u202d\u2066\u2068"),
    ZERO_WIDTH("a\u200bb\u200cc\u200dd\ufeffe\u2060f\u00adg\u180eh\u2064"),
    // Letters and marks that Unicode calls default ignorable: they have no width either.
    FILLERS("a\u3164b\u115fc\u1160d\uffa0e\u034ff\ufe0fg\u17b4h\u180bi" + "\udb40\udd00"),
    TAGS("a\udb40\udc41\udb40\udc7f"),
    ESCAPE("\u001b[2J\u001b]0;owned\u0007\u001b[31m"),
    CONTROLS("\u009b31m\u0000\u0001\b\u007f\u0090q\u009c"),
    COMMENT_ENDS("*/ int x; /* // **/ /*/"),
    TRIGRAPHS("??/ ??/\n ???/ ??' ??=define x"),
    LINE_ENDS_IN_BACKSLASH("a\\\nb\\"),
    UNIVERSAL_CHARACTER("\\u000a#error \\x41 \\N{BULLET} \\"),
    SHELL("`id` $(id) ${HOME} ; rm -rf / && | > x < y ' \" !! ~ * ? % %s %n %PATH% ^&"),
    MARKDOWN(
        "# x\n[a](http://x.example) ![b](c) **d** `e` ~~f~~ | g | <http://h.example> 1. - ---"),
    LINK("https://x.example/a www.x.example a@x.example"),
    HTML("<script>alert(1)</script><img src=x onerror=y>&lt;&#x3c;<!-- --> ]]>"),
    FIELD("TITLE ${TITLE} @TITLE@ {TITLE} {{TITLE}} {0} {name} %TITLE% $1 \\1 $0"),
    NON_BMP("\ud83d\ude9c\ud83d\udc68\u200d\ud83d\udc69 \ud835\udc9c \ud83c\uddec\ud83c\udde7"),
    // A private and an unassigned code point, and one that is no character.
    NO_CHARACTER("\ue000 \u0378 \udbff\udfff \uffff"),
    LONG("\u00fc".repeat(200)),
    LONG_PAIRS("\ud83d\ude9c".repeat(100)),
    LONG_ENDS("*/".repeat(100)),
    SPACES("   \u00a0 \u3000 "),
    QUOTES("\"'\"\",\"\\\",;\t\"");

    private final String text;

    Hostile(String text) {
      this.text = text;
    }
  }

  private static final String HARMLESS = "harmless";

  /** Ids are harmless but for what C, C++, spreadsheets, file systems and people make of them. */
  private static final List<String> IDS =
      Stream.of(
              "int",
              "class",
              "new",
              "auto",
              "register",
              "restrict",
              "inline",
              "asm",
              "main",
              "define",
              "defined",
              "include",
              "errno",
              "stdin",
              "uint8-t",
              "null",
              "true",
              "eof",
              "lampwright",
              "lamps",
              "frames",
              "max-lamps",
              "bytes",
              "table",
              "offset",
              "avr",
              "1-2",
              "0x10",
              "1e5",
              "007",
              "-",
              "--",
              "---",
              "-5",
              "-a",
              "a-",
              "a--",
              "a-b",
              "a--b",
              "ah-b",
              "a-hb",
              "h",
              "h-",
              "-h",
              "x".repeat(40),
              "-".repeat(40),
              "con",
              "nul",
              "com1")
          .toList();

  // What changes, turns or hides what stands around it: Unicode 15 general categories, and
  // DerivedCoreProperties.txt, Default_Ignorable_Code_Point, for the letters and marks among them.
  private static final Pattern HARMFUL =
      Pattern.compile(
          "[\\p{Cc}&&[^\n]]|\\p{Cf}|\\p{Co}|\\p{Cn}|\\p{Cs}|\\p{Zl}|\\p{Zp}"
              + "|[\\x{34f}\\x{115f}\\x{1160}\\x{17b4}\\x{17b5}\\x{180b}-\\x{180f}\\x{3164}"
              + "\\x{fe00}-\\x{fe0f}\\x{ffa0}\\x{e0000}-\\x{e0fff}]");
  private static final Pattern NOT_ASCII = Pattern.compile("[^\n -~]");
  private static final Pattern DIGEST = Pattern.compile("0x[0-9A-F]{8}UL");

  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir static Path shared;
  private static Outputs harmless;
  private static String harmlessElements;

  @TempDir Path folder;

  /** Everything that is written for a name. */
  private record Outputs(Path folder, Run check, Run measure, Run checkJson, Run measureJson) {
    static Outputs of(String name, Path folder) throws IOException {
      Path file = Files.writeString(folder.resolve("p.lampwright.json"), project(name));
      Run export =
          Run.of(
              "export",
              file,
              "--to",
              folder.resolve("out"),
              "--as",
              "c,bin,packed,hex,csv,firmware");
      assertThat(export.code()).as(export.err()).isZero();
      assertCalm(export.out().replace(folder.toString(), ""));
      assertCalm(export.err());
      return new Outputs(
          folder,
          Run.of("check", file),
          Run.of("measure", file),
          Run.of("check", file, "--json"),
          Run.of("measure", file, "--json"));
    }

    String text(String name) throws IOException {
      return Files.readString(folder.resolve("out").resolve(name));
    }

    byte[] bytes(String name) throws IOException {
      return Files.readAllBytes(folder.resolve("out").resolve(name));
    }

    List<String> names() throws IOException {
      Path out = folder.resolve("out");
      try (Stream<Path> files = Files.walk(out)) {
        return files
            .filter(Files::isRegularFile)
            .map(f -> out.relativize(f).toString().replace('\\', '/'))
            .sorted()
            .toList();
      }
    }

    /** The C of all files without comments and digests: what a compiler sees. */
    String tokens() throws IOException {
      List<String> words = new ArrayList<>(List.of("-std=c99", "-w", "-fpreprocessed", "-dD"));
      words.addAll(List.of("-E", "-P", "-x", "c"));
      names().stream().filter(HostileTextTest::isC).forEach(words::add);
      byte[] out = gcc(folder.resolve("out"), words);
      return DIGEST.matcher(new String(out, UTF_8)).replaceAll("DIGEST");
    }
  }

  /** A project that gives all there is to say about it the same name. */
  private static String project(String name) {
    String quoted = JSON.writeValueAsString(name);
    return """
    {"lampwright": 1, "name": NAME,
     "rig": {"controller": "atmega328p", "supplyLimitMilliamps": 20,
       "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 3}],
       "outputs": [{"id": "o"}, {"id": "spare"}],
       "lamps": [{"id": "l", "name": NAME, "function": "stop",
                  "pixels": [{"chain": "c", "count": 2}]},
                 {"id": "m", "name": NAME, "output": "o", "feel": {"riseMs": 90}}]},
     "scenes": [{"id": "s", "lengthMs": 1010, "framesPerSecond": 50, "loop": true, "tracks": [
       {"lamps": ["l", "m"], "cues": [{"lengthMs": 1000, "pattern":
         {"kind": "flash", "colour": {"signal": "blue"}, "onMs": 40, "offMs": 60}}]}]}]}
    """
        .replace("NAME", quoted);
  }

  @BeforeAll
  static void writeForAHarmlessName() throws Exception {
    harmless = Outputs.of(HARMLESS, Files.createDirectory(shared.resolve("harmless")));
    harmlessElements = elements(sheet(HARMLESS, shared));
  }

  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @EnumSource
  void everythingButTheNameIsTheSame(Hostile hostile) throws IOException {
    Outputs written = Outputs.of(hostile.text, folder);
    assertText("check", written.check(), harmless.check());
    assertText("measure", written.measure(), harmless.measure());
    assertJson("check --json", written.checkJson(), harmless.checkJson());
    assertJson("measure --json", written.measureJson(), harmless.measureJson());
    assertThat(JSON.readTree(written.measureJson().out()).path("name").asString())
        .isEqualTo(hostile.text);

    assertThat(written.names()).isEqualTo(harmless.names());
    for (String name : List.of("s.bin", "s.hex", "s.packed", "s.csv")) {
      assertThat(written.bytes(name)).as(name).isEqualTo(harmless.bytes(name));
    }
    for (String name : written.names()) {
      if (isC(name) || name.endsWith(".properties")) {
        assertThat(NOT_ASCII.matcher(written.text(name)).results()).as(name).isEmpty();
        assertThat(written.text(name).lines().count())
            .as("lines of " + name)
            .isEqualTo(harmless.text(name).lines().count());
      } else if (name.endsWith("README.md")) {
        assertCalm(written.text(name));
        assertThat(outline(written.text(name))).isEqualTo(outline(harmless.text(name)));
      } else if (!name.endsWith("lampwright_files.txt")) {
        // The Makefile, sketches, assembly: the name is not in them at all.
        assertThat(written.bytes(name)).as(name).isEqualTo(harmless.bytes(name));
      }
    }
    assertThat(written.tokens()).isEqualTo(harmless.tokens());
    assertCompiles(written);
    assertLibrary(written);
    // Names and digests, each on a line of its own.
    assertThat(written.text(named(written, "lampwright_files.txt")))
        .hasLineCount((int) harmless.text(named(harmless, "lampwright_files.txt")).lines().count());
  }

  /** A sheet is HTML and XML at once: as a browser and as a printer's parser have it. */
  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @EnumSource
  void sheetHasTheSameElementsWhateverTheName(Hostile hostile) throws Exception {
    assertThat(elements(sheet(hostile.text, folder))).isEqualTo(harmlessElements);
  }

  private static String sheet(String name, Path folder) throws IOException {
    String file = "sheet";
    Path project = Files.writeString(folder.resolve(file + ".json"), project(name));
    for (String ending : List.of(".html", ".pdf")) {
      Run run = Run.of("sheet", project, "--to", folder.resolve(file + ending));
      assertThat(run.code()).as(run.err()).isZero();
      assertThat(run.err()).isEmpty();
      assertCalm(run.out());
    }
    String html = Files.readString(folder.resolve(file + ".html"));
    assertCalm(html);
    return html;
  }

  /** Names and attributes in order, as an XML parser and an HTML parser have them. */
  private static String elements(String html) throws Exception {
    StringBuilder elements = new StringBuilder();
    DefaultHandler handler =
        new DefaultHandler() {
          @Override
          public void startElement(String uri, String local, String name, Attributes attributes) {
            elements.append('<').append(local.isEmpty() ? name : local);
            for (int i = 0; i < attributes.getLength(); i++) {
              elements.append(' ').append(attributes.getValue(i));
            }
          }
        };
    SAXParserFactory.newDefaultInstance()
        .newSAXParser()
        .parse(new InputSource(new StringReader(html)), handler);
    elements.append('\n');
    HtmlParser parser = new HtmlParser(XmlViolationPolicy.ALLOW);
    parser.setContentHandler(handler);
    parser.setErrorHandler(
        new DefaultHandler() {
          @Override
          public void error(SAXParseException fault) throws SAXException {
            throw fault;
          }
        });
    parser.parse(new InputSource(new StringReader(html)));
    return elements.toString();
  }

  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @EnumSource
  void messagesAboutItAreCalm(Hostile hostile) throws IOException {
    String quoted = JSON.writeValueAsString(hostile.text);
    Path file = folder.resolve("p.lampwright.json");
    String good = project(HARMLESS);
    Files.writeString(file, good);
    assertMessage(2, "export", file, "--to", folder, "--scene", hostile.text);
    assertMessage(2, "export", file, "--to", folder, "--as", "c," + hostile.text);
    assertMessage(2, "export", file, "--to", folder, "--at", hostile.text);
    assertMessage(2, "check", file, "--no-such-option" + hostile.text);
    assertMessage(2, "check", file, "x" + hostile.text);
    // One word is a command that does not exist, or a file that does not.
    Run word = Run.of("no" + hostile.text);
    assertThat(word.code()).as(word.err()).isIn(2, 3);
    assertMessage(word.code(), "no" + hostile.text);
    assertMessage(2, "pixels", "no" + hostile.text);

    List<String> faults =
        List.of(
            good.replace("\"lampwright\": 1", "\"lampwright\": 1, " + quoted + ": 1"),
            good.replace("{\"id\": \"s\"", "{\"id\": " + quoted + "+"),
            good.replace(
                "{\"id\": \"s\"", "{\"id\": " + JSON.writeValueAsString("A" + hostile.text)),
            good.replace(
                "\"output\": \"o\"", "\"output\": " + JSON.writeValueAsString("A" + hostile.text)),
            good.replace("\"ws2812b\"", JSON.writeValueAsString("A" + hostile.text)),
            good.replace("\"atmega328p\"", JSON.writeValueAsString("A" + hostile.text)),
            good.replace("\"flash\"", JSON.writeValueAsString("A" + hostile.text)),
            good.replace("{\"signal\": \"blue\"}", JSON.writeValueAsString("A" + hostile.text)));
    for (String fault : faults) {
      Files.writeString(file, fault);
      assertMessage(1, "check", file);
      Run json = Run.of("check", file, "--json");
      assertThat(NOT_ASCII.matcher(json.out()).results()).isEmpty();
      assertThat(JSON.readTree(json.out()).path("findings").size()).isPositive();
      assertMessage(1, "measure", file);
      assertMessage(1, "export", file, "--to", folder.resolve("none"));
    }
  }

  /** Names of files and folders come from others too: a downloaded project, a memory card. */
  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @EnumSource
  void fileAndFolderOfThatNameAreShownCalmly(Hostile hostile) throws IOException {
    OutsideTools.onThisMachine().find("gcc", "gcc");
    String name = hostile.text.replace('/', '.').replace('\u0000', '.');
    name = "p" + name.substring(0, Math.min(50, name.length()));
    // The last pair may be cut.
    name = Character.isHighSurrogate(name.charAt(name.length() - 1)) ? name + "\udc00" : name;
    Path file = folder.resolve(name + ".json");
    assertMessage(3, "check", file);
    Files.writeString(file, project(HARMLESS));
    for (String command : List.of("check", "measure")) {
      for (Run run : List.of(Run.of(command, file), Run.of(command, file, "--json"))) {
        assertCalm(run.out());
        assertCalm(run.err());
      }
    }
    Path to = folder.resolve(name);
    Run export = Run.of("export", file, "--to", to, "--as", "c,firmware");
    assertThat(export.code()).isZero();
    assertCalm(export.out());
    assertCalm(export.err());
    assertThat(export.out().lines()).hasSize(3);
    assertMessage(3, "export", file, "--to", file);
  }

  /** Names of C and C++, of devices, of options and numbers; ids that differ in hyphens alone. */
  @Test
  void idsMeanNothingToCOrSpreadsheets() throws IOException {
    Path file = Files.writeString(folder.resolve("p.lampwright.json"), projectOfIds());
    assertCalm(Run.of("check", file).err());
    List<Object> words = new ArrayList<>(List.of("export", file, "--to", folder.resolve("out")));
    words.addAll(List.of("--as", "c,csv,firmware"));
    List<String> scenes = IDS.stream().filter(id -> !refusedAsFile(id)).toList();
    scenes.forEach(id -> words.addAll(List.of("--scene", id)));
    Run export = Run.of(words.toArray());
    assertThat(export.code()).as(export.err()).isZero();
    for (String id : scenes) {
      for (String line : Files.readAllLines(folder.resolve("out").resolve(id + ".csv"))) {
        for (String cell : line.split(",", -1)) {
          assertThat(cell).doesNotStartWith("-").matches("[a-z0-9][-a-z0-9.:]*");
        }
      }
    }
    Outputs written = new Outputs(folder, export, export, export, export);
    assertCompiles(written);
    // All headers at once, in both languages.
    StringBuilder all = new StringBuilder();
    written.names().stream()
        .filter(name -> name.endsWith(".h"))
        .forEach(name -> all.append("#include \"").append(name).append("\"\n"));
    Path source = Files.writeString(folder.resolve("out/all.c"), all.append("int x;\n"));
    String firmware = named(written, "lampwright_scenes.h").replaceAll("/[^/]*$", "");
    for (List<String> language : List.of(List.of("-std=c99"), List.of("-xc++", "-std=c++11"))) {
      List<String> compiler = new ArrayList<>(language);
      compiler.addAll(List.of("-Wall", "-Wextra", "-Wpedantic", "-Werror", "-fsyntax-only"));
      compiler.addAll(List.of("-I" + firmware, source.toString()));
      gcc(folder.resolve("out"), compiler);
    }
    assertThat(outline(written.text(named(written, "README.md")))).isNotEmpty();
  }

  @Test
  void idsThatCannotNameAFileAreRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("p.lampwright.json"), projectOfIds());
    Run check = Run.of("check", file);
    assertThat(check.code()).isEqualTo(1);
    List<String> refused = check.err().lines().filter(l -> l.contains("[file-name]")).toList();
    assertThat(refused).hasSameSizeAs(IDS.stream().filter(HostileTextTest::refusedAsFile).toList());
    Run export = Run.of("export", file, "--to", folder.resolve("no"));
    assertThat(export.code()).isEqualTo(1);
    assertCalm(export.err());
    assertThat(folder.resolve("no")).doesNotExist();
  }

  @Test
  void waveformNamesPinsAlone() throws IOException {
    OutsideTools.onThisMachine().findSimulator();
    String name = Hostile.NEW_FIELD.text + Hostile.COMMENT_ENDS.text + Hostile.ESCAPE.text;
    String text = project(name).replace("\"id\": \"s\"", "\"id\": \"int\"");
    Path file = Files.writeString(folder.resolve("p.lampwright.json"), text);
    Run run = Run.of("prove", file, "--waveform", folder.resolve("waves"));
    assertThat(run.code()).as(run.err()).isZero();
    assertCalm(run.out());
    assertCalm(run.err());
    String dump = Files.readString(folder.resolve("waves/int.vcd"));
    assertThat(NOT_ASCII.matcher(dump).results()).isEmpty();
    assertThat(dump.lines().filter(line -> line.startsWith("$var ")))
        .allMatch(line -> line.matches("\\$var wire 1 \\S [B-D][0-7] \\$end"));
  }

  private static boolean refusedAsFile(String id) {
    return id.startsWith("-") || List.of("con", "nul", "com1").contains(id);
  }

  private static String projectOfIds() {
    StringBuilder chains = new StringBuilder();
    StringBuilder lamps = new StringBuilder();
    StringBuilder scenes = new StringBuilder();
    for (String id : IDS) {
      String comma = chains.isEmpty() ? "" : ",\n";
      chains.append(comma).append("{\"id\":\"" + id + "\",\"pixelType\":\"ws2812b\",\"pixels\":2}");
      lamps.append(comma).append("{\"id\":\"" + id + "\",\"pixels\":[{\"chain\":\"" + id + "\"}]}");
      scenes
          .append(comma)
          .append("{\"id\":\"" + id + "\",\"lengthMs\":40,\"tracks\":[{\"lamps\":[\"" + id + "\"],")
          .append("\"cues\":[{\"lengthMs\":40,\"pattern\":{\"kind\":\"steady\"}}]}]}");
    }
    String outputs = IDS.stream().map(id -> "{\"id\":\"" + id + "\"}").collect(joining(","));
    return """
    {"lampwright": 1, "rig": {"controller": "other", "supplyLimitMilliamps": 20000,
      "chains": [%s], "outputs": [%s], "lamps": [%s]}, "scenes": [%s]}
    """
        .formatted(chains, outputs, lamps, scenes);
  }

  private static void assertCalm(String text) {
    assertThat(HARMFUL.matcher(text).results().map(m -> (int) m.group().charAt(0)))
        .as("harmful characters in: " + text)
        .isEmpty();
  }

  private static void assertMessage(int code, Object... words) {
    Run run = Run.of(words);
    assertThat(run.code()).as(run.err()).isEqualTo(code);
    assertCalm(run.out());
    assertCalm(run.err());
    assertThat(run.err()).isNotEmpty();
    assertThat(run.err().lines()).allMatch(line -> line.length() <= 4000);
  }

  private static void assertText(String what, Run run, Run expected) {
    assertThat(run.code()).as(what).isEqualTo(expected.code());
    assertCalm(run.out());
    assertCalm(run.err());
    assertThat(run.out().lines().count()).as(what).isEqualTo(expected.out().lines().count());
    assertThat(run.err().lines().count()).as(what).isEqualTo(expected.err().lines().count());
  }

  private static void assertJson(String what, Run run, Run expected) {
    assertThat(NOT_ASCII.matcher(run.out()).results()).as(what).isEmpty();
    assertThat(shape(JSON.readTree(run.out())))
        .as(what)
        .isEqualTo(shape(JSON.readTree(expected.out())));
  }

  /** The values that are not text, by their place. */
  private static String shape(JsonNode node) {
    if (node.isObject()) {
      TreeMap<String, String> fields = new TreeMap<>();
      node.properties().forEach(field -> fields.put(field.getKey(), shape(field.getValue())));
      return fields.toString();
    }
    if (node.isArray()) {
      List<String> members = new ArrayList<>();
      node.forEach(member -> members.add(shape(member)));
      return members.toString();
    }
    return node.isString() ? "text" : node.toString();
  }

  private static boolean isC(String name) {
    return name.endsWith(".c") || name.endsWith(".h");
  }

  private static String named(Outputs outputs, String name) throws IOException {
    return outputs.names().stream().filter(n -> n.endsWith(name)).findFirst().orElseThrow();
  }

  private static void assertCompiles(Outputs written) throws IOException {
    String config = named(written, "lampwright_config.h");
    List<String> words = new ArrayList<>(List.of("-std=c99", "-Wall", "-Wextra", "-Wpedantic"));
    words.addAll(List.of("-Werror", "-Wcomment", "-Wtrigraphs", "-fsyntax-only"));
    words.add("-I" + config.substring(0, config.lastIndexOf('/')));
    // What drives pins is for AVR alone; the scenes, the configuration and the tables are not.
    written.names().stream()
        .filter(n -> n.endsWith(".c"))
        .filter(n -> !n.contains("/") || n.endsWith("lampwright_scenes.c"))
        .forEach(words::add);
    gcc(written.folder().resolve("out"), words);
  }

  private static void assertLibrary(Outputs written) throws IOException {
    List<String> lines = written.text(named(written, "library.properties")).lines().toList();
    List<String> expected = harmless.text(named(harmless, "library.properties")).lines().toList();
    assertThat(lines.subList(1, lines.size())).isEqualTo(expected.subList(1, expected.size()));
    // Library specification of hobby IDEs: letters, digits, spaces, _ . - and at most 63 of them.
    assertThat(lines.get(0)).matches("name=Lampwright[A-Za-z0-9 _.-]{1,53}");
  }

  private static byte[] gcc(Path where, List<String> words) {
    return OutsideTools.onThisMachine()
        .find("gcc", "gcc")
        .run(where, words.toArray(String[]::new))
        .quietOut();
  }

  /** The kinds of Markdown nodes in order, text aside: headings, tables, links, HTML. */
  private static String outline(String markdown) {
    StringBuilder outline = new StringBuilder();
    Parser.builder()
        .extensions(List.of(TablesExtension.create()))
        .build()
        .parse(markdown)
        .accept(
            new AbstractVisitor() {
              @Override
              protected void visitChildren(Node parent) {
                outline.append(parent.getClass().getSimpleName()).append('(');
                super.visitChildren(parent);
                outline.append(')');
              }

              @Override
              public void visit(Text text) {}
            });
    return outline.toString();
  }
}
