package lampwright.app.command;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.check.Checks;
import lampwright.engine.document.Project;
import lampwright.engine.meter.CurrentDraw;
import lampwright.engine.meter.DitherFlicker;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashTrain;
import lampwright.engine.meter.LampCaution;
import lampwright.engine.meter.LightReport;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.target.Target;
import tools.jackson.core.JsonGenerator;

/**
 * The figures of a measurement for other programs. The form is described in docs/formats.md; fields
 * are added, never changed, while its number stays the same.
 */
final class MeasureJson {
  private static final int FORM = 2;
  private static final MathContext DIGITS = new MathContext(7);

  private final JsonGenerator json;
  private final PowerJson power;

  private MeasureJson(JsonGenerator json) {
    this.json = json;
    this.power = new PowerJson(json, this::number);
  }

  static void write(
      Project project,
      List<Finding> ofProject,
      Optional<ShowMeasure> show,
      Optional<FirmwareMemory.Taken> taken,
      List<Measured> scenes,
      PrintWriter out) {
    PrettyJson.print(
        out, json -> new MeasureJson(json).project(project, ofProject, show, taken, scenes));
  }

  private void project(
      Project project,
      List<Finding> ofProject,
      Optional<ShowMeasure> show,
      Optional<FirmwareMemory.Taken> taken,
      List<Measured> scenes) {
    json.writeStartObject();
    json.writeNumberProperty("lampwrightMeasure", FORM);
    json.writeStringProperty("name", project.name());
    FindingJson.write(json, ofProject);
    json.writeArrayPropertyStart("scenes");
    scenes.forEach(this::scene);
    json.writeEndArray();
    show.ifPresent(of -> new ShowJson(json, this::number).write(project.rig(), of, taken));
    json.writeEndObject();
  }

  private void scene(Measured measured) {
    SceneReport report = measured.report();
    OptionalInt packedBytes = measured.packedBytes();
    FrameTable table = report.table();
    json.writeStartObject();
    json.writeStringProperty("id", table.scene().id());
    json.writeNumberProperty("frames", table.frameCount());
    json.writeNumberProperty("framesPerSecond", table.scene().framesPerSecond());
    json.writeBooleanProperty("loop", table.loops());
    json.writeNumberProperty("frameBytes", table.layout().bytes());
    json.writeNumberProperty("tableBytes", table.bytes());
    if (packedBytes.isPresent()) {
      json.writeNumberProperty("packedBytes", packedBytes.getAsInt());
    }
    if (measured.packedAtMost().isPresent()) {
      json.writeNumberProperty("packedBytesAtMost", measured.packedAtMost().getAsLong());
    }
    FindingJson.write(json, measured.findings());
    json.writeObjectPropertyStart("supply");
    drawn(report.measure().supply());
    number("limitMilliamps", table.layout().rig().supplyLimitMilliamps());
    number("joulesARun", report.joules());
    number("currentCapFactor", table.sceneFactor());
    report.pack().ifPresent(power::pack);
    json.writeEndObject();
    json.writeObjectPropertyStart("figures");
    report.figures().forEach(figure -> number(figure.key(), figure.value()));
    json.writeEndObject();
    json.writeArrayPropertyStart("chains");
    LineTimes times = Target.lineTimesOf(table.layout().rig());
    for (int i = 0; i < times.chains().size(); i++) {
      chain(report, times.chains().get(i), i);
    }
    json.writeEndArray();
    number("chainsInTurnUs", times.frameUs());
    json.writeArrayPropertyStart("outputs");
    report.measure().outputs().forEach(draw -> output(draw, report));
    json.writeEndArray();
    json.writeArrayPropertyStart("lamps");
    for (int i = 0; i < report.measure().lamps().size(); i++) {
      lamp(report.measure().lamps().get(i), report.measure().lights().get(i));
    }
    json.writeEndArray();
    json.writeObjectPropertyStart("wholeModel");
    flashCaution(
        report.measure().model().passes(),
        report.measure().model().general(),
        report.measure().model().red());
    json.writeEndObject();
    json.writeEndObject();
    json.writeEndObject();
  }

  private void drawn(CurrentDraw draw) {
    number("peakMilliamps", draw.peakMilliamps());
    json.writeNumberProperty("peakFrame", draw.peakFrame());
    number("meanMilliamps", draw.meanMilliamps());
  }

  private void chain(SceneReport report, WireTime wire, int i) {
    double rate = report.table().framesPerSecond();
    json.writeStartObject();
    json.writeStringProperty("id", wire.chain());
    drawn(report.measure().chains().get(i));
    number("wireUs", wire.frameUs());
    number("wireShare", wire.share(rate));
    number("highestFramesPerSecond", wire.highestFramesPerSecond());
    json.writeNumberProperty("longestChainPixels", wire.longestChain(rate));
    report.feedOf(wire.chain()).ifPresent(power::feed);
    json.writeEndObject();
  }

  private void output(CurrentDraw draw, SceneReport report) {
    json.writeStartObject();
    json.writeStringProperty("id", draw.id());
    drawn(draw);
    report.circuits().stream()
        .filter(circuit -> circuit.output().equals(draw.id()))
        .forEach(power::circuit);
    json.writeEndObject();
  }

  private void lamp(CurrentDraw draw, LightReport light) {
    json.writeStartObject();
    json.writeStringProperty("id", draw.id());
    drawn(draw);
    if (light.brightest().isPresent()) {
      json.writeObjectPropertyStart("brightest");
      json.writeNumberProperty("frame", light.brightestFrame());
      number("x", light.brightest().get().x());
      number("y", light.brightest().get().y());
      json.writeEndObject();
    }
    light.train().ifPresent(this::train);
    lampCaution(light);
    light.dither().ifPresent(this::dither);
    json.writeEndObject();
  }

  private void train(FlashTrain train) {
    json.writeObjectPropertyStart("flashes");
    optional("groupsPerMinute", train.groupsPerMinute());
    optional("flashesPerMinute", train.flashesPerMinute());
    json.writeNumberProperty("flashesPerGroup", train.flashesPerGroup());
    json.writeBooleanProperty("regular", train.regular());
    number("onSeconds", train.onSeconds());
    number("gapSeconds", train.gapSeconds());
    number("offSeconds", train.offSeconds());
    number("onShare", train.onShare());
    number("groupOnSeconds", train.groupOnSeconds());
    number("groupOffSeconds", train.groupOffSeconds());
    json.writeEndObject();
  }

  private void lampCaution(LightReport light) {
    LampCaution caution = light.caution();
    flashCaution(caution.passes(), light.worstGeneral().worst(), light.worstRed().worst());
    json.writeObjectPropertyStart("wholeLamp");
    second("general", caution.whole().general());
    second("red", caution.whole().red());
    json.writeEndObject();
    pixel("generalPixel", caution.general());
    pixel("redPixel", caution.red());
    json.writeEndObject();
  }

  // Left open, for more about the same.
  private void flashCaution(boolean passes, FlashCaution.Worst general, FlashCaution.Worst red) {
    json.writeObjectPropertyStart("flashCaution");
    json.writeNumberProperty("generalFlashesInASecond", general.flashes());
    number("generalFromSeconds", general.startSeconds());
    json.writeNumberProperty("redFlashesInASecond", red.flashes());
    number("redFromSeconds", red.startSeconds());
    json.writeNumberProperty("limit", FlashCaution.MOST_FLASHES);
    json.writeBooleanProperty("passes", passes);
  }

  private void second(String kind, FlashCaution.Worst worst) {
    json.writeNumberProperty(kind + "FlashesInASecond", worst.flashes());
    number(kind + "FromSeconds", worst.startSeconds());
  }

  private void pixel(String name, LampCaution.OfPixel of) {
    json.writeObjectPropertyStart(name);
    json.writeNumberProperty("pixel", of.pixel());
    json.writeNumberProperty("flashesInASecond", of.worst().flashes());
    number("fromSeconds", of.worst().startSeconds());
    json.writeEndObject();
  }

  private void dither(DitherFlicker flicker) {
    json.writeObjectPropertyStart("dither");
    json.writeNumberProperty("pixel", flicker.pixel());
    json.writeNumberProperty("lowByte", flicker.low());
    json.writeNumberProperty("highByte", flicker.high());
    json.writeNumberProperty("hertz", flicker.hertz());
    number("share", flicker.share());
    json.writeEndObject();
  }

  // Seven digits say all that is known, and read well.
  private void number(String name, double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      throw new IllegalStateException(name + ": " + value);
    }
    json.writeName(name);
    double rounded = new BigDecimal(value).round(DIGITS).doubleValue();
    json.writeNumber(new BigDecimal(Checks.plain(rounded)));
  }

  private void optional(String name, OptionalDouble value) {
    if (value.isPresent()) {
      number(name, value.getAsDouble());
    }
  }
}
