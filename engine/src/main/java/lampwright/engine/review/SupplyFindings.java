package lampwright.engine.review;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import lampwright.engine.document.Project;
import lampwright.engine.meter.ChainFeed;
import lampwright.engine.meter.CurrentDraw;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

/** Findings on the supply: its current, and what its voltage and the data level do to pixels. */
final class SupplyFindings implements Reviewer {
  private static final String SUPPLY = "rig.supplyVolts";
  private static final String DATA = "rig.dataVolts";

  @Override
  public void project(Project project, Consumer<Finding> found) {
    Rig rig = project.rig();
    Set<String> seen = new HashSet<>();
    for (Chain chain : rig.chains()) {
      if (seen.add(chain.type().id())) {
        supplyVoltage(rig, chain, found);
        dataLevel(rig, chain, found);
      }
    }
    levelShifter(rig, found);
  }

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    Rig rig = project.rig();
    current(rig, report, found);
    for (Chain chain : rig.chains()) {
      report.feedOf(chain.id()).ifPresent(feed -> levelAtPixel(rig, chain, feed, report, found));
    }
  }

  private static void current(Rig rig, SceneReport report, Consumer<Finding> found) {
    CurrentDraw supply = report.measure().supply();
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
                .with("cap", Figure.of(Math.floor(cap * 1000) / 10, 1, Unit.PERCENT));
    found.accept(
        draft
            .with("current", Figure.milliamps(supply.peakMilliamps()))
            .with("limit", Figure.milliamps(limit))
            .at("rig.supplyLimitMilliamps")
            .in(report.table().scene(), supply.peakFrame())
            .source("supply current limit of the rig")
            .make());
  }

  private static void supplyVoltage(Rig rig, Chain chain, Consumer<Finding> found) {
    SupplyNeeds needs = chain.type().needs();
    double supply = rig.supplyVolts();
    if (supply > needs.maxVolts()) {
      found.accept(outside(Code.PIXEL_OVER_VOLTAGE, rig, chain, needs.maxVolts(), "maxVolts"));
    } else if (supply < needs.failVolts()) {
      found.accept(
          outside(
              Code.PIXEL_UNDER_VOLTAGE, rig, chain, needs.failVolts(), "failVolts", "minVolts"));
    } else if (supply < needs.minVolts()) {
      found.accept(outside(Code.PIXEL_DIM_VOLTAGE, rig, chain, needs.minVolts(), "minVolts"));
    }
  }

  private static Finding outside(
      Code code, Rig rig, Chain chain, double limit, String... sourceItems) {
    return Finding.of(code, new Subject.OneChain(chain.id()))
        .with("volts", Figure.volts(rig.supplyVolts()))
        .with("limit", Figure.volts(limit))
        .with("usual", Figure.of(chain.type().volts(), 1, Unit.VOLTS))
        .at(SUPPLY)
        .source(PartSource.of(chain.type(), sourceItems))
        .make();
  }

  // The first pixel's supply is greatest when all are dark, and so is the level that it asks for.
  private static void dataLevel(Rig rig, Chain chain, Consumer<Finding> found) {
    SupplyNeeds needs = chain.type().needs();
    double level = rig.dataLevelVolts();
    double least = needs.inputHighVolts(rig.supplyVolts());
    if (level < least) {
      found.accept(
          Finding.of(Code.DATA_LEVEL_LOW, new Subject.OneChain(chain.id()))
              .with("volts", Figure.volts(level))
              .with("limit", Figure.volts(least))
              .with("supply", Figure.volts(rig.supplyVolts()))
              .at(DATA)
              .source(PartSource.of(chain.type(), "inputHighShare", "inputHighVolts"))
              .make());
    }
    if (level > needs.inputMaxVolts(rig.supplyVolts())) {
      found.accept(tooHigh(rig, chain, rig.supplyVolts()).make());
    }
  }

  private static void levelAtPixel(
      Rig rig, Chain chain, ChainFeed feed, SceneReport report, Consumer<Finding> found) {
    SupplyNeeds needs = chain.type().needs();
    double level = rig.dataLevelVolts();
    double least = feed.leastVolts().get(0);
    if (level > needs.inputMaxVolts(least) && level <= needs.inputMaxVolts(rig.supplyVolts())) {
      found.accept(tooHigh(rig, chain, least).in(report.table().scene()).make());
    }
  }

  private static Finding.Draft tooHigh(Rig rig, Chain chain, double supplyVolts) {
    return Finding.of(Code.DATA_LEVEL_HIGH, new Subject.OneChain(chain.id()))
        .with("volts", Figure.volts(rig.dataLevelVolts()))
        .with("limit", Figure.volts(chain.type().needs().inputMaxVolts(supplyVolts)))
        .with("supply", Figure.volts(supplyVolts))
        .at(DATA)
        .source(PartSource.of(chain.type(), "inputMaxShare", "inputMaxVolts"));
  }

  // A board may run at less than usual; more comes from a level shifter alone.
  private static void levelShifter(Rig rig, Consumer<Finding> found) {
    double level = rig.dataLevelVolts();
    rig.controller()
        .filter(controller -> !rig.chains().isEmpty() && level > 1.1 * rig.pinVolts())
        .ifPresent(
            controller ->
                found.accept(
                    Finding.of(Code.DATA_LEVEL_STATED, new Subject.Chip(controller.name()))
                        .with("volts", Figure.volts(level))
                        .with("limit", Figure.volts(rig.pinVolts()))
                        .at(DATA)
                        .source(controller.pinSource())
                        .make()));
  }
}
