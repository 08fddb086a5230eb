package lampwright.engine.project;

import java.util.List;
import lampwright.engine.light.Curve;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.InputLevel;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

/** Writes the rig and the pixel types. */
final class RigWriter {
  private RigWriter() {}

  static Out rig(Rig rig) {
    FieldWriter f =
        new FieldWriter()
            .number("supplyVolts", rig.supplyVolts())
            .number("supplyLimitMilliamps", rig.supplyLimitMilliamps());
    rig.dataVolts().ifPresent(volts -> f.number("dataVolts", volts));
    f.value("curve", curve(rig.curve()))
        .text("colourMatching", rig.colourMatching().key())
        .flag("whiteFromRgb", rig.whiteFromRgb())
        .number("brightnessCap", rig.brightnessCap())
        .text("currentCap", rig.currentCap().key());
    rig.feed().ifPresent(feed -> f.value("feed", feed(feed)));
    rig.battery().ifPresent(battery -> f.value("battery", battery(battery)));
    rig.controller()
        .ifPresent(
            controller -> {
              f.text("controller", controller.id());
              controller.clockMegahertz().ifPresent(clock -> f.number("clockMegahertz", clock));
            });
    return f.list("chains", rig.chains(), RigWriter::chain)
        .list("outputs", rig.outputs(), RigWriter::output)
        .list("lamps", rig.lamps(), RigWriter::lamp)
        .done();
  }

  private static Out feed(Feed feed) {
    FieldWriter f = new FieldWriter();
    conductor(f, "awg", "mm2", feed.lead());
    f.numberUnless(Feed.DEFAULT_SUPPLY_MM, "supplyMm", feed.supplyMm())
        .numberUnless(Feed.DEFAULT_PITCH_MM, "pitchMm", feed.pitchMm())
        .textUnless(Feed.DEFAULT_ENDS.key(), "ends", feed.ends().key());
    feed.farSupplyMm().ifPresent(mm -> f.number("farSupplyMm", mm));
    if (!feed.strip().equals(Feed.DEFAULT_STRIP)) {
      conductor(f, "stripAwg", "stripMm2", feed.strip());
    }
    feed.fuseAmps().ifPresent(amps -> f.number("fuseAmps", amps));
    return f.done();
  }

  private static void conductor(FieldWriter f, String awg, String mm2, Conductor conductor) {
    conductor.gauge().ifPresent(gauge -> f.number(awg, gauge));
    conductor.area().ifPresent(area -> f.number(mm2, area));
  }

  private static Out battery(Battery battery) {
    FieldWriter f =
        new FieldWriter()
            .number("milliampHours", battery.milliampHours())
            .numberUnless(Battery.DEFAULT_USABLE_SHARE, "usableShare", battery.usableShare());
    battery.packVolts().ifPresent(volts -> f.number("packVolts", volts));
    f.textUnless(Battery.DEFAULT_REGULATOR.key(), "regulator", battery.regulator().key());
    battery.efficiency().ifPresent(share -> f.number("efficiency", share));
    battery.fuseAmps().ifPresent(amps -> f.number("fuseAmps", amps));
    return f.done();
  }

  static Out pixelType(PixelType type) {
    FieldWriter emitters = new FieldWriter();
    for (EmitterKind kind : type.emitters().keySet()) {
      emitters.value(kind.key(), emitter(type.emitters().get(kind)));
    }
    FieldWriter f =
        new FieldWriter()
            .text("id", type.id())
            .text("order", type.order().letters())
            .numberUnless(PixelType.DEFAULT_IDLE_MILLIAMPS, "idleMilliamps", type.idleMilliamps())
            .numberUnless(PixelType.DEFAULT_VOLTS, "volts", type.volts());
    if (!type.needs().equals(PixelType.usualNeeds(type.volts()))) {
      needs(f, type.needs());
    }
    f.value("emitters", emitters.done());
    return type.line().equals(LineTiming.DEFAULT)
        ? f.done()
        : f.value("line", line(type.line())).done();
  }

  // In full, but for the 0 of a level that is all share or all volts.
  private static void needs(FieldWriter f, SupplyNeeds needs) {
    f.number("failVolts", needs.failVolts())
        .number("minVolts", needs.minVolts())
        .number("maxVolts", needs.maxVolts());
    level(f, "inputHigh", needs.inputHigh());
    level(f, "inputMax", needs.inputMax());
  }

  private static void level(FieldWriter f, String name, InputLevel level) {
    f.numberUnless(0, name + "Share", level.supplyShare());
    if (level.volts() != 0 || level.supplyShare() == 0) {
      f.number(name + "Volts", level.volts());
    }
  }

  private static Out emitter(FittedEmitter emitter) {
    return new FieldWriter()
        .number("x", emitter.light().chromaticity().x())
        .number("y", emitter.light().chromaticity().y())
        .number("mcd", emitter.light().millicandela())
        .numberUnless(PixelType.DEFAULT_EMITTER_MILLIAMPS, "milliamps", emitter.milliamps())
        .done();
  }

  // In full: the times belong together.
  private static Out line(LineTiming line) {
    FieldWriter f =
        new FieldWriter()
            .value("t0hNs", time(line.t0h()))
            .value("t0lNs", time(line.t0l()))
            .value("t1hNs", time(line.t1h()))
            .value("t1lNs", time(line.t1l()));
    line.toleranceNs().ifPresent(tolerance -> f.number("toleranceNs", tolerance));
    line.bit().ifPresent(bit -> f.value("bitNs", time(bit)));
    return f.number("resetUs", line.resetUs()).done();
  }

  private static Out time(LineTime time) {
    return time instanceof LineTime.Range range
        ? FieldWriter.list(
            List.of(range.leastNs(), range.greatestNs()), ns -> FieldWriter.number(ns))
        : FieldWriter.number(time.nominalNs());
  }

  private static Out curve(Curve curve) {
    FieldWriter f = new FieldWriter().text("kind", CurveKinds.of(curve));
    if (curve instanceof Curve.Power power) {
      f.number("gamma", power.gamma());
    }
    return f.done();
  }

  private static Out chain(Chain chain) {
    FieldWriter f =
        new FieldWriter()
            .text("id", chain.id())
            .text("pixelType", chain.type().id())
            .number("pixels", chain.pixels())
            .textUnless(chain.type().order().letters(), "order", chain.order().letters());
    chain.whiteKelvin().ifPresent(kelvin -> f.number("whiteKelvin", kelvin));
    chain.pin().ifPresent(pin -> f.text("pin", pin.name()));
    chain.feed().ifPresent(feed -> f.value("feed", feed(feed)));
    return f.done();
  }

  private static Out output(DriverOutput output) {
    FieldWriter f =
        new FieldWriter()
            .text("id", output.id())
            .colourUnless(DriverOutput.DEFAULT_COLOUR, "colour", output.colour())
            .numberUnless(DriverOutput.DEFAULT_MILLIAMPS, "milliamps", output.milliamps())
            .numberUnless(
                DriverOutput.DEFAULT_LEDS_IN_SERIES, "ledsInSeries", output.ledsInSeries())
            .numberUnless(DriverOutput.DEFAULT_FORWARD_VOLTS, "forwardVolts", output.forwardVolts())
            .textUnless(
                DriverOutput.usualSupply(output.drive()).key(), "supply", output.supply().key());
    output.drive().ifPresent(drive -> f.text("drive", drive.key()));
    output.pin().ifPresent(pin -> f.text("pin", pin.name()));
    return f.done();
  }

  private static Out lamp(Lamp lamp) {
    FieldWriter f =
        new FieldWriter()
            .text("id", lamp.id())
            .textUnless("", "name", lamp.name())
            .textUnless(LampFunction.OTHER.key(), "function", lamp.function().key());
    if (lamp.fitting() instanceof Fitting.Output fitted) {
      f.text("output", fitted.output());
    } else if (lamp.fitting() instanceof Fitting.Pixels fitted) {
      f.value("pixels", runs(fitted.runs()));
    }
    lamp.place().ifPresent(place -> f.value("place", place(place)));
    lamp.feel().ifPresent(feel -> f.value("feel", feel(feel)));
    return f.done();
  }

  private static Out runs(List<PixelRun> runs) {
    return FieldWriter.list(
        runs,
        run ->
            new FieldWriter()
                .text("chain", run.chain())
                .numberUnless(PixelRun.DEFAULT_FROM, "from", run.from())
                .numberUnless(PixelRun.DEFAULT_COUNT, "count", run.count())
                .done());
  }

  private static Out place(Place place) {
    return new FieldWriter()
        .textUnless(Place.DEFAULT_VIEW.key(), "view", place.view().key())
        .numberUnless(Place.DEFAULT_X, "x", place.x())
        .numberUnless(Place.DEFAULT_Y, "y", place.y())
        .numberUnless(Place.DEFAULT_SIZE, "size", place.size())
        .done();
  }

  private static Out feel(Feel feel) {
    return new FieldWriter()
        .numberUnless(Feel.DEFAULT_RISE_MS, "riseMs", feel.riseMs())
        .numberUnless(Feel.DEFAULT_FALL_MS, "fallMs", feel.fallMs())
        .done();
  }
}
