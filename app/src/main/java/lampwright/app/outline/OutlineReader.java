package lampwright.app.outline;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import lampwright.exporters.picture.PathData;

/**
 * Reads drawings that come with the program: SVG files with a viewBox from 0 0, and in it nothing
 * but paths with a class that is a {@link Tone}. Whatever else a file holds is refused, so that
 * nothing is silently not drawn.
 */
final class OutlineReader {
  private static final String SVG = "http://www.w3.org/2000/svg";
  private static final Pattern VIEW_BOX = Pattern.compile("0 0 (\\d{1,4}) (\\d{1,4})");

  private final XMLStreamReader xml;
  private final List<Outline.Piece> pieces = new ArrayList<>();

  private OutlineReader(XMLStreamReader xml) {
    this.xml = xml;
  }

  /**
   * Reads a drawing.
   *
   * @throws IllegalArgumentException if it is none; its message gives the line
   */
  static Outline read(InputStream file) {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    try {
      return new OutlineReader(factory.createXMLStreamReader(file)).drawing();
    } catch (XMLStreamException noXml) {
      throw new IllegalArgumentException("not a drawing: " + noXml.getMessage(), noXml);
    }
  }

  private Outline drawing() throws XMLStreamException {
    expect(XMLStreamConstants.START_ELEMENT, "svg");
    attributes("viewBox");
    Matcher box = VIEW_BOX.matcher(attribute("viewBox"));
    if (!box.matches()) {
      throw wrong("viewBox: must have 0 0 and a width and height");
    }
    double width = Double.parseDouble(box.group(1));
    double height = Double.parseDouble(box.group(2));
    while (next() == XMLStreamConstants.START_ELEMENT) {
      piece();
    }
    expectHere(XMLStreamConstants.END_ELEMENT, "svg");
    if (next() != XMLStreamConstants.END_DOCUMENT) {
      throw wrong("needs its end");
    }
    try {
      return new Outline(width, height, pieces);
    } catch (IllegalArgumentException empty) {
      throw wrong(String.valueOf(empty.getMessage()));
    }
  }

  private void piece() throws XMLStreamException {
    expectHere(XMLStreamConstants.START_ELEMENT, "path");
    attributes("class", "d");
    String key = attribute("class");
    Tone tone = Tone.of(key).orElseThrow(() -> wrong("class " + key + ": no such tone"));
    try {
      pieces.add(new Outline.Piece(tone, new PathData(attribute("d"))));
    } catch (IllegalArgumentException noPath) {
      throw wrong(String.valueOf(noPath.getMessage()));
    }
    expect(XMLStreamConstants.END_ELEMENT, "path");
  }

  /** The next event that is not white space. */
  private int next() throws XMLStreamException {
    int event = xml.next();
    while ((event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.SPACE)
        && xml.isWhiteSpace()) {
      event = xml.next();
    }
    return event;
  }

  private void expect(int event, String name) throws XMLStreamException {
    next();
    expectHere(event, name);
  }

  private void expectHere(int event, String name) {
    if (xml.getEventType() != event
        || !xml.getLocalName().equals(name)
        || !SVG.equals(xml.getNamespaceURI())) {
      throw wrong("needs " + name + " of SVG and nothing else");
    }
  }

  private void attributes(String... names) {
    if (xml.getAttributeCount() != names.length) {
      throw wrong("needs " + String.join(", ", names) + " and no other attribute");
    }
  }

  private String attribute(String name) {
    String value = xml.getAttributeValue(null, name);
    if (value == null) {
      throw wrong("needs " + name);
    }
    return value;
  }

  private IllegalArgumentException wrong(String why) {
    return new IllegalArgumentException(
        "not a drawing, line " + xml.getLocation().getLineNumber() + ": " + why);
  }
}
