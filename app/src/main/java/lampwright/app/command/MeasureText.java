package lampwright.app.command;

import com.google.common.base.Strings;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.meter.ColourPlace;
import lampwright.engine.meter.CurrentDraw;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashSpot;
import lampwright.engine.meter.FlashTrain;
import lampwright.engine.meter.LightReport;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.RateVerdict;
import lampwright.engine.meter.SceneFigure;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.target.FirmwareSize;
import lampwright.exporters.target.Target;

/** The figures of a measurement for people: what matters first, then aligned columns. */
final class MeasureText {
  private static final String WCAG = "WCAG 2.2 2.3.1";

  private final PrintWriter out;
  private final PowerText power;

  MeasureText(PrintWriter out) {
    this.out = out;
    this.power = new PowerText(out);
  }

  void write(
      Project project,
      List<Finding> ofProject,
      Optional<ShowMeasure> show,
      Optional<FirmwareMemory.Taken> taken,
      List<Measured> scenes) {
    if (!project.name().isEmpty()) {
      out.println(SafeText.text(project.name(), SafeText.MAX_MESSAGE));
    }
    ofProject.forEach(finding -> FindingText.paragraph(finding, out));
    show.ifPresent(
        of -> {
          new ShowText(out).write(project.rig(), of);
          taken.ifPresent(all -> memory(Target.of(project.rig()), all));
        });
    for (Measured measured : scenes) {
      out.println();
      scene(measured);
    }
  }

  private void scene(Measured measured) {
    SceneReport report = measured.report();
    FrameTable table = report.table();
    say(
        "Scene %s: %d frames at %s frames/s, %.3f s, %s",
        table.scene().id(),
        table.frameCount(),
        table.scene().framesPerSecond().toPlainString(),
        table.frameCount() / table.framesPerSecond(),
        table.loops() ? "loops" : "plays once");
    if (measured.findings().isEmpty()) {
      say("  No problems found.");
    }
    measured.findings().forEach(finding -> FindingText.paragraph(finding, out));
    supply(report);
    lines(report);
    power.feeds(report);
    power.outputs(report);
    memory(table, measured);
    lamps(report);
  }

  private void supply(SceneReport report) {
    Rig rig = report.table().layout().rig();
    CurrentDraw supply = report.measure().supply();
    say("");
    say(
        "  Supply     peak %s mA of %s mA (%s), frame %d at %.3f s; mean %s mA; %.2f J per run",
        whole(supply.peakMilliamps()),
        whole(rig.supplyLimitMilliamps()),
        percent(supply.peakMilliamps() / rig.supplyLimitMilliamps()),
        supply.peakFrame(),
        supply.peakFrame() / report.table().framesPerSecond(),
        whole(supply.meanMilliamps()),
        report.joules());
    if (report.table().sceneFactor() < 1) {
      say("             currentCap scales every drive by %.4f", report.table().sceneFactor());
    }
    power.battery(report);
    for (SceneFigure figure : report.figures()) {
      say("  %-11s%s %s %s", figure.title(), whole(figure.value()), figure.unit(), figure.words());
    }
  }

  private void lines(SceneReport report) {
    double rate = report.table().framesPerSecond();
    LineTimes times = Target.lineTimesOf(report.table().layout().rig());
    for (int i = 0; i < times.chains().size(); i++) {
      WireTime wire = times.chains().get(i);
      CurrentDraw draw = report.measure().chains().get(i);
      say(
          "  Chain      %s  peak %s mA, mean %s mA; data transfer %.2f ms (%s of frame time); max"
              + " %.1f frames/s; max %d pixels at this rate",
          padded(wire.chain()),
          whole(draw.peakMilliamps()),
          whole(draw.meanMilliamps()),
          wire.frameUs() / 1000,
          percent(wire.share(rate)),
          Math.floor(wire.highestFramesPerSecond() * 10) / 10,
          wire.longestChain(rate));
    }
    if (times.chains().size() > 1) {
      say(
          "             all chains sent one after another: %.2f ms (%s of frame time)",
          times.frameUs() / 1000, percent(times.share(rate)));
    }
    for (CurrentDraw draw : report.measure().outputs()) {
      say(
          "  Output     %s  peak %s mA, mean %s mA",
          padded(draw.id()), whole(draw.peakMilliamps()), whole(draw.meanMilliamps()));
    }
  }

  private void memory(FrameTable table, Measured measured) {
    OptionalInt packedBytes = measured.packedBytes();
    String packed = packedBytes.isPresent() ? packedBytes.getAsInt() + " bytes" : "not possible";
    if (measured.packedAtMost().isPresent()) {
      packed =
          String.format(
              Locale.ROOT,
              "at most %d bytes (measure does not pack tables above %d MiB)",
              measured.packedAtMost().getAsLong(),
              FirmwareMemory.LARGE >> 20);
    }
    say(
        "  Memory     raw table (c, bin, hex) %d bytes; packed %s; %d bytes per frame",
        table.bytes(), packed, table.layout().bytes());
    Rig rig = table.layout().rig();
    if (rig.controller().isPresent()) {
      memory(Target.of(rig), rig, packedBytes);
    }
  }

  private void memory(Target target, Rig rig, OptionalInt packedBytes) {
    FirmwareSize size = target.size(rig);
    OptionalInt flash = target.memory().freeFlashBytes();
    OptionalInt ram = target.memory().ramBytes();
    if (packedBytes.isPresent() && flash.isPresent()) {
      int needed = packedBytes.getAsInt() + size.programBytes();
      say(
          "             %s: packed with player and driver %d of %d bytes of program memory (%s)",
          target.name(), needed, flash.getAsInt(), percent((double) needed / flash.getAsInt()));
    }
    if (ram.isPresent()) {
      say(
          "             %s: frame, player and stack %d of %d bytes of working memory (%s)",
          target.name(),
          size.ramBytes(),
          ram.getAsInt(),
          percent((double) size.ramBytes() / ram.getAsInt()));
    }
  }

  private void memory(Target target, FirmwareMemory.Taken taken) {
    String form = "  %-10s %s: all scenes and situations, %s %d of %d bytes of %s memory (%s)";
    int flash = target.memory().freeFlashBytes().orElseThrow();
    int needed = taken.programBytes();
    String share = percent((double) needed / flash);
    String data = "packed with player and driver";
    say(form, "Memory", target.name(), data, needed, flash, "program", share);
    target
        .memory()
        .ramBytes()
        .ifPresent(
            ram ->
                say(
                    form,
                    "",
                    target.name(),
                    "with frame, player and stack",
                    taken.ramBytes(),
                    ram,
                    "working",
                    percent((double) taken.ramBytes() / ram)));
  }

  private void lamps(SceneReport report) {
    List<LightReport> lights = report.measure().lights();
    List<Lamp> lamps = report.table().layout().rig().lamps();
    for (int i = 0; i < lights.size(); i++) {
      LightReport light = lights.get(i);
      int place = i;
      CurrentDraw draw = report.measure().lamps().get(i);
      say(
          "  Lamp       %s  peak %s mA; %s; %s",
          padded(light.id()),
          whole(draw.peakMilliamps()),
          light.brightest().map(c -> colour(c, lamps.get(place))).orElse("dark"),
          light.train().map(t -> flashes(t, lamps.get(place))).orElse("does not flash"));
    }
    flashCheck("flashes", report.measure().worstGeneral());
    flashCheck("flashes to or from saturated red", report.measure().worstRed());
  }

  private void flashCheck(String what, FlashSpot spot) {
    FlashCaution.Worst worst = spot.worst();
    if (worst.flashes() == 0) {
      say("  Flash check  passes, no %s (limit %d, %s)", what, FlashCaution.MOST_FLASHES, WCAG);
      return;
    }
    say(
        "  Flash check  %s, %s: %d %s per second from %.2f s (limit %d, %s)",
        worst.passes() ? "passes" : "fails",
        spot.lamp().isPresent() ? "lamp " + spot.words() : spot.words(),
        worst.flashes(),
        worst.flashes() == 1 ? what.replaceFirst("flashes", "flash") : what,
        worst.startSeconds(),
        FlashCaution.MOST_FLASHES,
        WCAG);
  }

  private static String colour(Chromaticity point, Lamp lamp) {
    if (lamp.fitting() instanceof Fitting.Output) {
      return "plain LED";
    }
    String place =
        ColourPlace.of(lamp.function(), point)
            .map(
                p ->
                    p.inside()
                        ? ", inside " + p.boundary().words()
                        : String.format(
                            Locale.ROOT,
                            ", %.4f outside %s towards %s",
                            -p.margin(),
                            p.boundary().words(),
                            p.towards()))
            .orElse("");
    return String.format(Locale.ROOT, "x %.4f y %.4f%s", point.x(), point.y(), place);
  }

  private static String flashes(FlashTrain train, Lamp lamp) {
    String verdict =
        train.groupsPerMinute().isPresent()
            ? RateVerdict.of(lamp.function(), train.groupsPerMinute().getAsDouble())
                .map(v -> "; " + v.words())
                .orElse("")
            : "";
    return train.rateWords()
        + String.format(
            Locale.ROOT,
            ", on %.2f s, off %.2f s (%s lit)",
            train.onSeconds(),
            train.offSeconds(),
            percent(train.onShare()))
        + verdict;
  }

  private void say(String form, Object... values) {
    out.println(String.format(Locale.ROOT, form, values));
  }

  private static String padded(String id) {
    return Strings.padEnd(id, 16, ' ');
  }

  private static String whole(double value) {
    return String.format(Locale.ROOT, "%.0f", value);
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }
}
