package lampwright.app.picture;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import lampwright.exporters.picture.ColourRow;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.picture.SvgPainter;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What is written is read by the XML parser of the Java library. */
class SvgPainterTest {
  private enum TestInk implements Ink {
    LINE,
    BODY
  }

  private static final Map<String, String> COLOURS = Map.of("LINE", "#102030", "BODY", "#405060");

  private static Document parsed(DisplayList list) throws Exception {
    String svg = SvgPainter.write(list, ink -> COLOURS.getOrDefault(ink.name(), "#000000"));
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(UTF_8)));
  }

  private static List<Element> elements(Document document) {
    List<Element> found = new ArrayList<>();
    var children = document.getDocumentElement().getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i) instanceof Element element) {
        found.add(element);
      }
    }
    return found;
  }

  private static String values(Element element, String... names) {
    List<String> values = new ArrayList<>();
    for (String name : names) {
      values.add(element.getAttribute(name));
    }
    return String.join(" ", values);
  }

  @Test
  void documentHasItsSizeAndNamespace() throws Exception {
    Element root = parsed(new DisplayList(120.5, 80, List.of())).getDocumentElement();
    assertThat(root.getNamespaceURI()).isEqualTo("http://www.w3.org/2000/svg");
    assertThat(root.getLocalName()).isEqualTo("svg");
    assertThat(values(root, "width", "height", "viewBox")).isEqualTo("120.5 80 0 0 120.5 80");
  }

  @Test
  void everyShapeIsWritten() throws Exception {
    Stroke line = new Stroke(TestInk.LINE, 1.5);
    DisplayList list =
        new DisplayList.Builder(100, 100)
            .line(1, 2, 3, 4, line)
            .fillRect(10, 20, 30, 40, TestInk.BODY)
            .add(new Mark.Ellipse(5, 6, 7, 8, Optional.of(TestInk.BODY), Optional.of(line)))
            .add(
                new Mark.Path(
                    List.of(new Mark.Point(0, 0), new Mark.Point(9.25, 0), new Mark.Point(0, 9)),
                    true,
                    Optional.empty(),
                    Optional.of(line)))
            .centred(50, 50, "7", 10, TestInk.LINE)
            .add(new Mark.Strip(0, 90, 40, 5, new ColourRow(0xFFFF0000, 0xFFFF0000, 0, 0xFF0000FF)))
            .build();
    List<Element> found = elements(parsed(list));
    assertThat(found)
        .extracting(Element::getLocalName)
        .containsExactly("line", "rect", "ellipse", "polygon", "text", "rect", "rect");
    assertThat(values(found.get(0), "x1", "y1", "x2", "y2", "stroke", "stroke-width"))
        .isEqualTo("1 2 3 4 #102030 1.5");
    assertThat(values(found.get(1), "x", "y", "width", "height", "fill", "stroke"))
        .isEqualTo("10 20 30 40 #405060 ");
    assertThat(values(found.get(2), "cx", "cy", "rx", "ry", "fill", "stroke"))
        .isEqualTo("5 6 7 8 #405060 #102030");
    assertThat(values(found.get(3), "points", "fill")).isEqualTo("0,0 9.25,0 0,9 none");
    assertThat(values(found.get(4), "x", "font-size", "text-anchor")).isEqualTo("50 10 middle");
    assertThat(values(found.get(5), "x", "width", "fill")).isEqualTo("0 20 #ff0000");
    assertThat(values(found.get(6), "x", "width", "fill")).isEqualTo("30 10 #0000ff");
  }

  /** Names come from project files. Characters: XML 1.0 (W3C, fifth edition), section 2.2. */
  @Test
  void hostileTextStaysText() throws Exception {
    String hostile = "</text><script>\"&amp;' \u0000\u001b\uffff \ud83d\ude80";
    DisplayList list =
        new DisplayList.Builder(10, 10)
            .text(0, 0, hostile, 8, Mark.Height.TOP, TestInk.LINE)
            .build();
    List<Element> found = elements(parsed(list));
    assertThat(found).hasSize(1);
    assertThat(found.get(0).getTextContent())
        .isEqualTo("</text><script>\"&amp;' \ufffd\ufffd\ufffd \ud83d\ude80");
  }

  @Test
  void numbersAreWrittenTheSameInEveryLocale() throws Exception {
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("de", "tr", "ar-EG")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        Element root = parsed(new DisplayList(1234.5, 100, List.of())).getDocumentElement();
        assertThat(values(root, "width", "height")).isEqualTo("1234.5 100");
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void labelStaysWithinTheDrawing() {
    Mark.Label label = new Mark.Label(5, 4, "a", 10, TestInk.LINE, TestInk.BODY);
    assertThat(label.left(40, 100)).isEqualTo(2);
    assertThat(label.top(12)).isEqualTo(2);
    Mark.Label right = new Mark.Label(95, 50, "a", 10, TestInk.LINE, TestInk.BODY);
    assertThat(right.left(40, 100)).isEqualTo(50);
    assertThat(right.top(12)).isEqualTo(36);
  }

  @Test
  void openPathIsALine() throws Exception {
    Mark.Path path =
        new Mark.Path(
            List.of(new Mark.Point(0, 0), new Mark.Point(1, 1)),
            false,
            Optional.empty(),
            Optional.of(Stroke.thin(TestInk.LINE)));
    Element line = elements(parsed(new DisplayList(5, 5, List.of(path)))).get(0);
    assertThat(line.getLocalName() + " " + values(line, "points", "fill"))
        .isEqualTo("polyline 0,0 1,1 none");
  }

  @Test
  void pathRefusesTwoCorners() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new Mark.Path(
                    List.of(new Mark.Point(0, 0), new Mark.Point(1, 1)),
                    true,
                    Optional.empty(),
                    Optional.empty()))
        .withMessage("corners: 2: must be at least 3");
  }
}
