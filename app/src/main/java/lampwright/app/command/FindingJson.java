package lampwright.app.command;

import java.util.List;
import java.util.Map;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Location;
import lampwright.engine.review.Moment;
import tools.jackson.core.JsonGenerator;

/** Findings for other programs. The form is described in docs/formats.md. */
final class FindingJson {
  private FindingJson() {}

  /** Writes an array of findings as a property of the object that is open. */
  static void write(JsonGenerator json, List<Finding> findings) {
    json.writeArrayPropertyStart("findings");
    findings.forEach(finding -> write(json, finding));
    json.writeEndArray();
  }

  private static void write(JsonGenerator json, Finding finding) {
    json.writeStartObject();
    json.writeStringProperty("code", finding.code().key());
    json.writeStringProperty("severity", finding.severity().key());
    json.writeStringProperty("subject", finding.about());
    finding.place().ifPresent(place -> place(json, place));
    finding.moment().ifPresent(moment -> moment(json, moment));
    json.writeStringProperty("finding", finding.what());
    json.writeStringProperty("limit", finding.limit());
    json.writeStringProperty("source", finding.source());
    json.writeStringProperty("remedy", finding.remedy());
    json.writeObjectPropertyStart("figures");
    for (Map.Entry<String, Figure> figure : finding.figures().entrySet()) {
      figure(json, figure.getKey(), figure.getValue());
    }
    json.writeEndObject();
    json.writeEndObject();
  }

  private static void place(JsonGenerator json, Location place) {
    json.writeStringProperty("path", place.path());
    place
        .position()
        .ifPresent(
            at -> {
              json.writeNumberProperty("line", at.line());
              json.writeNumberProperty("column", at.column());
            });
  }

  private static void moment(JsonGenerator json, Moment moment) {
    json.writeStringProperty("scene", moment.scene());
    moment
        .frame()
        .ifPresent(
            frame -> {
              json.writeNumberProperty("frame", frame);
              json.writeNumberProperty("seconds", moment.seconds());
            });
  }

  private static void figure(JsonGenerator json, String name, Figure figure) {
    if (figure instanceof Figure.Quantity quantity) {
      json.writeObjectPropertyStart(name);
      json.writeNumberProperty("value", quantity.value());
      json.writeStringProperty("unit", quantity.unit().symbol());
      json.writeEndObject();
    } else {
      json.writeStringProperty(name, figure.text());
    }
  }
}
