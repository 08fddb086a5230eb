package lampwright.app.workshop.model;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import lampwright.app.outline.Outline;
import lampwright.app.picture.Dots;
import lampwright.app.picture.ModelDrawing;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.drawing.CallOuts;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.ribbon.RibbonDrawing;
import lampwright.app.workshop.model.ribbon.RibbonInk;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.rig.WiringDrawing;
import lampwright.app.workshop.model.rig.WiringInk;
import lampwright.app.workshop.model.rig.WiringLayout;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.SvgPainter;
import lampwright.exporters.picture.TypeMeasure;
import lampwright.exporters.wiring.WiringPlan;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The drawings of the workshop, written as SVG and read by the XML parser of the Java library. */
class DrawingsTest {
  private static Document parsed(DisplayList list) throws Exception {
    String svg = SvgPainter.write(list, ink -> "#102030");
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(UTF_8)));
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
  void wiringIsWrittenWithEveryPixelAndLamp() throws Exception {
    Rig rig = Projects4Tests.sample("recovery-tractor").rig();
    WiringLayout layout =
        new WiringLayout(rig, WiringPlan.of(rig, List.of()), 600, 13, TypeMeasure.ESTIMATE);
    DisplayList list =
        WiringDrawing.of(
            rig,
            layout,
            new WiringDrawing.Sight(600, layout.height(), 0, 13),
            WiringDrawing.Chosen.NOTHING);
    List<String> texts =
        elements(parsed(list)).stream()
            .filter(element -> element.getTagName().equals("text"))
            .map(Element::getTextContent)
            .toList();
    for (var chain : rig.chains()) {
      assertThat(texts).anyMatch(text -> text.startsWith("Chain " + chain.id() + ":"));
      assertThat(texts).contains("0", Integer.toString(chain.pixels() - 1));
    }
    for (var output : rig.outputs()) {
      assertThat(texts).anyMatch(text -> text.contains(output.id()));
    }
    assertThat(texts).contains("Roof beacon", "left");
  }

  /** Each side of the model, and the selected lamp with its leader line and name. */
  @Test
  void modelIsWrittenWithItsLamps() throws Exception {
    Bench bench = new Bench(Projects4Tests.sample("recovery-tractor"));
    DrawingSheet sheet = new DrawingSheet();
    try (LightService lights = new LightService(bench, work -> {})) {
      DrawingModel model =
          new DrawingModel(
              bench, lights, new Playhead(bench), sheet, new PixelExplainer(bench, work -> {}));
      for (View view : View.values()) {
        sheet.viewProperty().set(view);
        Outline outline = ModelDrawing.of(bench.project(), view);
        Dots.Frame frame = Dots.Frame.within(400, 300, outline.width() / outline.height(), 20);
        DisplayList.Builder list = new DisplayList.Builder(400, 300);
        ModelDrawing.add(list, outline, frame);
        assertThat(elements(parsed(list.build()))).hasSize(outline.pieces().size());
        CallOuts callOuts = new CallOuts(model, frame, 400, 300);
        List<Lamp> drawn = model.drawn();
        // A ring around a single light; several pixels are drawn where they are.
        long single =
            drawn.stream()
                .filter(
                    l ->
                        !(l.fitting() instanceof Fitting.Pixels pixels)
                            || pixels.runs().stream().mapToInt(PixelRun::count).sum() == 1)
                .count();
        bench.select(bench.selection().withLamps(List.of()));
        assertThat(elements(parsed(callOuts.sockets()))).hasSize((int) single);
        bench.select(bench.selection().withLamps(drawn.stream().map(Lamp::id).toList()));
        assertThat(elements(parsed(callOuts.sockets()))).hasSize(drawn.size());
        if (!drawn.isEmpty()) {
          String lamp = drawn.get(drawn.size() - 1).id();
          bench.select(bench.selection().withLamps(List.of(lamp)));
          sheet.rowsProperty().set(List.of(new DrawingSheet.Row(lamp, 120)));
          List<Element> over = elements(parsed(callOuts.over(13, Optional.empty(), false)));
          assertThat(over)
              .anySatisfy(e -> assertThat(values(e, "y1", "x2", "y2")).isEqualTo("120 400 120"));
          assertThat(over)
              .extracting(Element::getTextContent)
              .contains(Titles.of(drawn.get(drawn.size() - 1)));
        }
      }
    }
  }

  /** Every lamp has a title, every cue of the scene its handle and name, the selected one marks. */
  @Test
  void ribbonsAreWrittenWithTheirCues() throws Exception {
    Bench bench = new Bench(Projects4Tests.sample("recovery-tractor"));
    try (LightService lights = new LightService(bench, work -> {});
        RibbonsModel ribbons =
            new RibbonsModel(
                bench,
                lights,
                new Playhead(bench),
                new DrawingSheet(),
                new PixelExplainer(bench, work -> {}),
                work -> {})) {
      ribbons.resize(900, 2000, 16, 30);
      ribbons.time().showAll();
      bench.select(
          bench.selection().withCues(List.of(new CueRef(0, 0))).withLamps(List.of("beacon-left")));
      ribbons.rows().toggleUnfolded("beacon-left");
      RibbonDrawing drawing = new RibbonDrawing(ribbons, TypeMeasure.ESTIMATE, 13);
      List<Element> titles = elements(parsed(drawing.titles(300, 2000)));
      for (Lamp lamp : bench.project().rig().lamps()) {
        assertThat(titles).anyMatch(e -> e.getTextContent().endsWith(lamp.title()));
      }
      assertThat(titles)
          .filteredOn(e -> e.getAttribute("font-weight").equals("bold"))
          .extracting(Element::getTextContent)
          .containsExactly("Roof beacon, left");
      assertThat(elements(parsed(drawing.timeLine(900, 30))))
          .extracting(Element::getTextContent)
          .contains("0 s", "1 s");
      List<String> names =
          elements(parsed(drawing.rows(900, 2000))).stream()
              .map(Element::getTextContent)
              .filter(text -> !text.isEmpty())
              .toList();
      long cues =
          bench.scene().orElseThrow().tracks().stream()
              .mapToLong(track -> (long) track.lamps().size() * track.cues().size())
              .sum();
      assertThat(names).contains("Rotating beacon 150/min").hasSizeLessThanOrEqualTo((int) cues);
      assertThat(drawing.rows(900, 2000).marks())
          .anyMatch(
              shape ->
                  shape instanceof Mark.Rect rect
                      && rect.fill().equals(Optional.of(RibbonInk.ON_FILM_CHOSEN)));
    }
  }

  @Test
  void onlyTheChosenChainShowsMarkedPixels() {
    Rig rig = Projects4Tests.small().rig();
    WiringLayout layout =
        new WiringLayout(rig, WiringPlan.of(rig, List.of()), 600, 13, TypeMeasure.ESTIMATE);
    var sight = new WiringDrawing.Sight(600, 300, 0, 13);
    var marked =
        new WiringDrawing.Chosen(
            new lampwright.app.workshop.model.rig.RigPart.OfChain("c"),
            java.util.Set.of(1),
            java.util.OptionalInt.of(0));
    assertThat(filled(WiringDrawing.of(rig, layout, sight, marked))).isEqualTo(1);
    assertThat(filled(WiringDrawing.of(rig, layout, sight, WiringDrawing.Chosen.NOTHING))).isZero();
  }

  private static long filled(DisplayList list) {
    return list.marks().stream()
        .filter(
            shape ->
                shape instanceof Mark.Rect rect
                    && rect.fill().equals(Optional.of(WiringInk.MARKED)))
        .count();
  }
}
