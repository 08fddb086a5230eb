package lampwright.engine.review;

import java.util.HashSet;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import lampwright.engine.meter.Draw;
import lampwright.engine.meter.FeedMeter;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.SeriesResistor;
import lampwright.engine.meter.Volts;
import lampwright.engine.meter.Wire;
import lampwright.engine.project.Project;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

/** Findings on supply, wires, resistors and battery. */
final class SupplyFindings implements Reviewer {
  private static final String PRACTICE = "common practice";

  @Override
  public void project(Project project, Consumer<Finding> found) {
    Rig rig = project.rig();
    supplyVoltage(rig, found);
    for (DriverOutput output : rig.outputs()) {
      string(rig, output, found);
    }
    if (rig.battery().isPresent()) {
      found.accept(
          Finding.of(Code.BATTERY_UNFUSED, new Subject.Pack())
              .at("rig.battery")
              .source(PRACTICE)
              .make());
    }
  }

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    current(project.rig(), report, found);
    report.volts().forEach(volts -> chainVoltage(project.rig(), report, volts, found));
  }

  private static void current(Rig rig, SceneReport report, Consumer<Finding> found) {
    Draw supply = report.measure().supply();
    double limit = rig.supplyLimitMilliamps();
    if (supply.peakMilliamps() <= limit) {
      return;
    }
    double idle = new FrameCurrent(report.table().layout()).idleMilliamps();
    double cap =
        rig.brightnessCap() * (limit - idle) / Math.max(1e-9, supply.peakMilliamps() - idle);
    Finding.Draft draft =
        idle > limit
            ? Finding.of(Code.IDLE_CURRENT, new Subject.Supply())
                .with("idle", Figure.milliamps(idle))
            : Finding.of(Code.SUPPLY_CURRENT, new Subject.Supply())
                .with("cap", Figure.of(Math.floor(cap * 1000) / 1000, 3, Unit.NONE));
    found.accept(
        draft
            .with("current", Figure.milliamps(supply.peakMilliamps()))
            .with("limit", Figure.milliamps(limit))
            .at("rig.supplyLimitMilliamps")
            .in(report.table().scene(), supply.peakFrame())
            .source("the rig's supplyLimitMilliamps")
            .make());
  }

  private static void supplyVoltage(Rig rig, Consumer<Finding> found) {
    Set<PixelType> seen = new HashSet<>();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      PixelType type = chain.type();
      if (!seen.add(type)) {
        continue;
      }
      SupplyNeeds needs = type.needs();
      double supply = rig.supplyVolts();
      Subject subject = new Subject.OneChain(chain.id());
      Finding.Draft draft;
      if (supply > needs.maxVolts()) {
        draft =
            Finding.of(Code.PIXEL_OVER_VOLTAGE, subject)
                .with("limit", Figure.volts(needs.maxVolts()));
      } else if (supply < needs.minVolts()) {
        draft =
            Finding.of(Code.PIXEL_UNDER_VOLTAGE, subject)
                .with("limit", Figure.volts(needs.minVolts()));
      } else if (rig.dataVolts() < needs.inputHighVolts(supply)) {
        found.accept(
            Finding.of(Code.DATA_LEVEL_LOW, subject)
                .with("volts", Figure.volts(rig.dataVolts()))
                .with("limit", Figure.volts(needs.inputHighVolts(supply)))
                .at("rig.dataVolts")
                .source("pixel type " + type.id())
                .make());
        continue;
      } else {
        continue;
      }
      found.accept(
          draft
              .with("volts", Figure.volts(supply))
              .with("usual", Figure.of(type.volts(), 1, Unit.VOLTS))
              .at("rig.supplyVolts")
              .source("pixel type " + type.id())
              .make());
    }
  }

  private static void chainVoltage(
      Rig rig, SceneReport report, Volts volts, Consumer<Finding> found) {
    Subject subject = new Subject.OneChain(volts.chain());
    if (volts.firstBelow().isPresent()) {
      String remedy =
          volts.neededMm2().isEmpty()
              ? "no wire is thick enough: use a higher supply voltage or draw less"
              : "use wire of "
                  + wire(volts.neededMm2().getAsDouble())
                  + ", shorten the feed, feed the chain at both ends, or draw less";
      found.accept(
          Finding.of(Code.CHAIN_VOLTAGE_DROP, subject)
              .with("pixel", Figure.count(volts.lowestPixel()))
              .with("volts", Figure.volts(volts.lowest()))
              .with("first", Figure.count(volts.firstBelow().getAsInt()))
              .with("limit", Figure.volts(volts.neededVolts()))
              .with("remedy", Figure.words(remedy))
              .at("rig.feed")
              .in(report.table().scene())
              .source("pixel type's least supply; copper by IEC 60028")
              .make());
    }
    double carries = FeedMeter.wire(rig.feed().orElseThrow()).cautionAmps();
    if (volts.feedAmps() > carries) {
      found.accept(
          Finding.of(Code.LEAD_HEAT, subject)
              .with("current", Figure.amps(volts.feedAmps()))
              .with("limit", Figure.amps(carries))
              .at("rig.feed")
              .in(report.table().scene())
              .source("5 A/mm2, " + PRACTICE)
              .make());
    }
  }

  private static String wire(double mm2) {
    OptionalInt gauge = Wire.gaugeAtLeast(mm2);
    String area = Figure.of(Math.ceil(mm2 * 1000) / 1000, 3, Unit.SQUARE_MILLIMETRES).text();
    return area + " or more" + (gauge.isPresent() ? " (AWG " + gauge.getAsInt() + ")" : "");
  }

  private static void string(Rig rig, DriverOutput output, Consumer<Finding> found) {
    if (output.supply() != OutputSupply.VOLTAGE
        || output.milliamps() <= 0
        || SeriesResistor.of(
                rig.supplyVolts(), output.ledsInSeries(), output.forwardVolts(), output.milliamps())
            .isPresent()) {
      return;
    }
    found.accept(
        Finding.of(Code.OUTPUT_CANNOT_LIGHT, new Subject.OneOutput(output.id()))
            .with("leds", Figure.count(output.ledsInSeries()))
            .with("volts", Figure.volts(output.ledsInSeries() * output.forwardVolts()))
            .with("limit", Figure.volts(rig.supplyVolts()))
            .at("rig.outputs[" + rig.outputs().indexOf(output) + "].ledsInSeries")
            .source("R = (Vs - n Vf) / If, " + PRACTICE)
            .make());
  }
}
