package lampwright.exporters.sheet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import lampwright.exporters.sheet.BuildSheet.Part;
import lampwright.exporters.sheet.BuildSheet.SceneChart;
import lampwright.exporters.sheet.BuildSheet.Strip;

/**
 * The build sheet as one HTML document (WHATWG HTML) that needs no other file, and that is XML as
 * well, so that the PDF is made from it. Black on white; what is marked is marked by a sign.
 */
public final class SheetHtml {
  private static final String STYLE =
      """
      @page { size: A4; margin: 11mm 12mm 12mm 12mm; }
      body { font-family: Helvetica, Arial, sans-serif; font-size: 8pt; line-height: 1.25;
        color: #000; background: #fff; margin: 0; }
      h1 { font-size: 15pt; margin: 0; }
      h2 { font-size: 9.5pt; margin: 2.2mm 0 0.8mm 0; border-bottom: 0.5pt solid #000;
        page-break-after: avoid; }
      h3 { font-size: 8pt; margin: 1.4mm 0 0.4mm 0; page-break-after: avoid; }
      p { margin: 0.4mm 0; }
      p.legend { font-size: 7pt; page-break-after: avoid; }
      table { border-collapse: collapse; width: 100%; }
      th, td { border: 0.4pt solid #777; padding: 0.3mm 1mm; text-align: left;
        vertical-align: top; }
      th { font-weight: bold; border-bottom: 0.8pt solid #000; }
      tr { page-break-inside: avoid; }
      table.short { page-break-inside: avoid; }
      td.pixels { width: 45%; }
      td.line { width: 18%; }
      td.fill { width: 20%; }
      td.severity { width: 8%; }
      td.part { width: 22%; }
      td.remedy { width: 31%; }
      table.check td { border: none; padding: 0.25mm 1mm 0.25mm 0; }
      table.check td.box { width: 4mm; }
      span.box { display: block; width: 2.2mm; height: 2.2mm; margin-top: 0.4mm;
        border: 0.6pt solid #000; }
      table.chart td { border: none; padding: 0.2mm 1mm; }
      table.chart td.lamp { width: 20%; }
      table.chart td.trace { width: 400px; }
      table.chart td.cues { font-size: 7pt; }
      svg.trace { display: block; }
      div.axis { position: relative; width: 400px; height: 3.4mm; font-size: 6.5pt; border-top: 0.5pt solid #000; }
      div.axis span { position: absolute; top: 0; border-left: 0.5pt solid #000;
        padding-left: 0.4mm; }
      .small { font-size: 7pt; }
      @media screen { body { max-width: 190mm; margin: 6mm auto; padding: 0 4mm; } }
      """;

  /** Rows of a table that is not divided. */
  private static final int SHORT = 14;

  /** Numbers on an axis: no more than these. */
  private static final int TICKS = 10;

  private final Markup out = new Markup();
  private final BuildSheet sheet;
  private final String moreStyle;

  private SheetHtml(BuildSheet sheet, String moreStyle) {
    this.sheet = sheet;
    this.moreStyle = moreStyle;
  }

  /** The document. */
  public static String write(BuildSheet sheet) {
    return write(sheet, "");
  }

  /**
   * The document with rules of CSS after its own, such as those of a printer's fonts.
   *
   * @param moreStyle holds no text of a project
   */
  public static String write(BuildSheet sheet, String moreStyle) {
    return new SheetHtml(sheet, moreStyle).document();
  }

  private String document() {
    out.raw("<!DOCTYPE html>\n");
    out.open("html lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\"").open("head");
    out.raw("<meta charset=\"utf-8\"/>\n");
    out.raw("<meta name=\"viewport\" content=\"width=device-width\"/>\n");
    out.element("title", sheet.name() + " \u2013 build sheet");
    out.open("style").raw(STYLE).raw(moreStyle).close("style");
    out.close("head").open("body");
    head();
    findings();
    checklist();
    chains();
    wires();
    outputs();
    pins();
    currents();
    situations();
    scenes();
    out.close("body").close("html");
    return out.toString();
  }

  private void head() {
    out.open("h1").open("bdi").text(sheet.name()).raw("</bdi>").close("h1");
    out.element("p", String.join(" \u00b7 ", sheet.facts()));
    // A supply by itself is among the facts.
    if (sheet.source().size() > 1) {
      line("Supply line: ", sheet.source());
    }
    out.element(
        "p class=\"small\"",
        "Signs: + has to be added, ! see the findings. Pixels are numbered from the data input, the"
            + " first is 0. Capacitors and data resistors are common practice.");
  }

  private void section(String title) {
    out.element("h2", title);
  }

  private void parts(List<Part> parts) {
    if (parts.isEmpty()) {
      out.text("\u2013");
    }
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      out.text(i == 0 ? "" : " \u2192 ");
      switch (part.mark()) {
        case NONE -> out.text(part.words());
        case ADD -> out.open("strong").text("+ " + part.words()).raw("</strong>");
        case TROUBLE -> out.open("strong").text("! " + part.words()).raw("</strong>");
      }
    }
  }

  /** Short tables stay on one page; others repeat their header. */
  private Markup table(String kind, int rows) {
    return out.open("table class=\"" + kind + (rows <= SHORT ? " short" : " long") + "\"");
  }

  private void header(String... names) {
    out.open("thead").open("tr");
    for (String name : names) {
      out.open("th scope=\"col\"").text(name).raw("</th>");
    }
    out.close("tr").close("thead").open("tbody");
  }

  private void cell(String text) {
    out.open("td").text(text).raw("</td>");
  }

  private void name(String text) {
    out.open("td").open("bdi").text(text).raw("</bdi></td>");
  }

  private void findings() {
    section("Findings");
    if (sheet.findings().isEmpty()) {
      out.element("p", "No findings.");
      return;
    }
    table("", sheet.findings().size());
    header("Severity", "Part", "What, and the limit", "Remedy");
    for (BuildSheet.FindingRow row : sheet.findings()) {
      out.open("tr").open("td class=\"severity\"").open("strong").text(row.severity());
      out.raw("</strong></td>").open("td class=\"part\"").open("bdi").text(row.where());
      out.raw("</bdi></td>");
      cell(row.what());
      out.open("td class=\"remedy\"").text(row.remedy()).raw("</td>");
      out.close("tr");
    }
    out.close("tbody").close("table");
  }

  private void checklist() {
    section("Before and at the first power-up");
    out.open("table class=\"check short\"").open("tbody");
    for (String step : sheet.checklist()) {
      out.open("tr").raw("<td class=\"box\"><span class=\"box\"></span></td>");
      cell(step);
      out.close("tr");
    }
    out.close("tbody").close("table");
    out.open("p").open("strong").text("Cautions. ").raw("</strong>");
    out.text(String.join(" ", sheet.cautions())).close("p");
  }

  private void chains() {
    if (sheet.chains().isEmpty()) {
      return;
    }
    section("Chains, in data order");
    for (BuildSheet.ChainPlan chain : sheet.chains()) {
      out.element("h3", chain.title());
      line("Data: ", chain.data());
      line("Supply to the first pixel: ", chain.supply());
      if (!chain.farSupply().isEmpty()) {
        line("Supply to the last pixel: ", chain.farSupply());
      }
      out.element("p", String.join(". ", chain.loads()) + ".");
      table("", chain.segments().size());
      header("Pixels", "Lamp", "Part of the lamp");
      for (BuildSheet.Segment segment : chain.segments()) {
        out.open("tr");
        out.open("td class=\"pixels\"").text(segment.pixels()).raw("</td>");
        name(segment.lamp().orElse("not used"));
        cell(segment.lamp().isEmpty() || !segment.within().isEmpty() ? segment.within() : "all");
        out.close("tr");
      }
      out.close("tbody").close("table");
    }
  }

  private void line(String what, List<Part> parts) {
    out.open("p").text(what);
    parts(parts);
    out.close("p");
  }

  /** Blank where the project knows nothing: what is fitted is the builder's to write down. */
  private void wires() {
    if (sheet.chains().isEmpty() && sheet.outputs().isEmpty()) {
      return;
    }
    section("Wire colours and connectors: write down yours");
    table("", sheet.chains().size() + sheet.outputs().size());
    out.open("thead").open("tr");
    for (String name : List.of("Line", "Supply +", "Data or switched \u2212", "Ground")) {
      out.open("th scope=\"col\"").text(name).raw("</th>");
    }
    out.open("th scope=\"col\"").text("Connector").raw("</th>");
    out.close("tr").close("thead").open("tbody");
    out.open("tr");
    cell("common practice");
    cell("red");
    cell("data green; switched \u2212 any other");
    cell("black, on bought strips also white");
    cell("keyed, so that it cannot be reversed");
    out.close("tr");
    for (BuildSheet.ChainPlan chain : sheet.chains()) {
      blank(SheetMaker.kindAndId("chain", chain.id()));
    }
    for (BuildSheet.OutputPlan output : sheet.outputs()) {
      blank(SheetMaker.kindAndId("output", output.id()));
    }
    out.close("tbody").close("table");
    out.element(
        "p class=\"small\"",
        "Common practice, no standard: colours of bought strips differ. Measure before you connect.");
  }

  private void blank(String line) {
    out.open("tr").open("td class=\"line\"").text(line).raw("</td>");
    for (int i = 0; i < 4; i++) {
      out.raw("<td class=\"fill\">\u00a0</td>");
    }
    out.close("tr");
  }

  private void outputs() {
    if (sheet.outputs().isEmpty()) {
      return;
    }
    section("Driver outputs");
    table("", sheet.outputs().size());
    header("Output", "Lamp", "Parts from the pin", "Peak");
    for (BuildSheet.OutputPlan output : sheet.outputs()) {
      out.open("tr");
      cell(output.id());
      name(output.lamp().orElse("not used"));
      out.open("td");
      parts(output.parts());
      out.raw("</td>");
      cell(output.peak());
      out.close("tr");
    }
    out.close("tbody").close("table");
  }

  private void pins() {
    if (sheet.pins().isEmpty()) {
      return;
    }
    section("Controller pins");
    boolean sketches = sheet.pins().stream().anyMatch(pin -> !pin.sketch().isEmpty());
    table("", sheet.pins().size());
    if (sketches) {
      header("Pin", "In a sketch", "Use");
    } else {
      header("Pin", "Use");
    }
    for (BuildSheet.PinUse pin : sheet.pins()) {
      out.open("tr");
      cell(pin.pin().orElse("not set: ______"));
      if (sketches) {
        cell(pin.sketch());
      }
      name(pin.use());
      out.close("tr");
    }
    out.close("tbody").close("table");
  }

  private void currents() {
    if (sheet.currents().isEmpty()) {
      return;
    }
    section("Currents and data lines");
    boolean data = sheet.currents().stream().anyMatch(current -> !current.data().isEmpty());
    table("", sheet.currents().size());
    if (data) {
      header("", "Peak", "Mean", "Supply limit", "Data transfer per frame");
    } else {
      header("", "Peak", "Mean", "Supply limit");
    }
    for (BuildSheet.Current current : sheet.currents()) {
      out.open("tr");
      cell(current.what());
      cell(current.peak());
      cell(current.mean().isEmpty() ? "\u2013" : current.mean());
      cell(current.limit());
      if (data) {
        cell(current.data().isEmpty() ? "\u2013" : current.data());
      }
      out.close("tr");
    }
    out.close("tbody").close("table");
  }

  private void situations() {
    if (sheet.situations().isEmpty()) {
      return;
    }
    section("Situations, highest priority first");
    table("", sheet.situations().size());
    header("Priority", "Situation", "Active when", "Scene");
    for (BuildSheet.SituationRow row : sheet.situations()) {
      out.open("tr");
      cell(Integer.toString(row.priority()));
      cell(row.id());
      cell(row.when());
      cell(row.shows());
      out.close("tr");
    }
    out.close("tbody").close("table");
  }

  private void scenes() {
    if (sheet.scenes().isEmpty()) {
      return;
    }
    section("Scenes");
    out.element(
        "p class=\"legend\"",
        "Height: lightness (CIE 1976 L*) relative to the brightest of the lamp in the scene. Lamps of"
            + " up to "
            + TracePath.ROWS
            + " pixels have a row for each pixel, the first on top; others show the mean.");
    for (SceneChart scene : sheet.scenes()) {
      out.element("h3", scene.title());
      if (!scene.lamps().isEmpty()) {
        chart(scene);
      }
      if (!scene.dark().isEmpty()) {
        out.open("p").text("Dark: ");
        for (int i = 0; i < scene.dark().size(); i++) {
          String comma = i + 1 < scene.dark().size() ? ", " : "";
          // The comma inside, or a line could begin with it.
          out.open("bdi").text(scene.dark().get(i) + comma).raw("</bdi>");
        }
        out.close("p");
      }
    }
  }

  private void chart(SceneChart scene) {
    table("chart", scene.lamps().size()).open("tbody");
    for (Strip strip : scene.lamps()) {
      out.open("tr").open("td class=\"lamp\"").open("bdi").text(strip.lamp()).raw("</bdi></td>");
      out.open("td class=\"trace\"").raw(TracePath.svg(strip.trace())).raw("</td>");
      out.open("td class=\"cues\"").text(strip.cues()).raw("</td>").close("tr");
    }
    out.open("tr").open("td class=\"lamp\"").text("s").raw("</td>");
    out.open("td class=\"trace\"").open("div class=\"axis\"");
    double step = step(scene.seconds());
    // The last number has no room where it would be at the very end.
    for (int i = 0; i * step <= 0.97 * scene.seconds(); i++) {
      out.raw(
          String.format(
              Locale.ROOT, "<span style=\"left: %.2f%%\">", 100 * i * step / scene.seconds()));
      out.text(plain(i * step)).raw("</span>");
    }
    out.raw("</div></td>").raw("<td class=\"cues\"></td>").close("tr");
    out.close("tbody").close("table");
  }

  /** Steps of 1, 2 or 5. */
  private static double step(double seconds) {
    double least = seconds / TICKS;
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double factor : new double[] {1, 2, 5}) {
      if (factor * power >= least * (1 - 1e-9)) {
        return factor * power;
      }
    }
    return 10 * power;
  }

  private static String plain(double value) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(4));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
