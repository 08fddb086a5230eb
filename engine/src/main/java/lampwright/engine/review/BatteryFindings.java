package lampwright.engine.review;

import java.util.HashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import lampwright.engine.check.Checks;
import lampwright.engine.document.Project;
import lampwright.engine.meter.Fuses;
import lampwright.engine.meter.PackLoad;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.Wiring;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Regulator;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

/** Findings on the battery pack: its fuse, its voltage and its regulator. */
final class BatteryFindings implements Reviewer {
  private static final String PRACTICE = "common practice";
  private static final String CELLS =
      "a lithium cell of 3.7 V has 4.2 V when full, common practice";
  private static final String BATTERY = "rig.battery";
  private static final Subject PACK = new Subject.Pack();

  @Override
  public void project(Project project, Consumer<Finding> found) {
    Rig rig = project.rig();
    rig.battery()
        .ifPresent(
            battery -> {
              fuse(rig, battery, found);
              volts(rig, battery, found);
              Set<PixelType> seen = new HashSet<>();
              rig.chains().stream()
                  .filter(chain -> seen.add(chain.type()))
                  .forEach(chain -> pixels(rig, battery, chain, found));
            });
  }

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    OptionalDouble fuse =
        project.rig().battery().map(Battery::fuseAmps).orElse(OptionalDouble.empty());
    Optional<PackLoad> load = report.pack();
    if (fuse.isEmpty() || load.isEmpty()) {
      return;
    }
    double peak = load.get().peakMilliamps() * 1e-3;
    if (!Fuses.carries(fuse.getAsDouble(), peak)) {
      found.accept(
          Finding.of(Code.BATTERY_FUSE_SMALL, PACK)
              .with("fuse", Figure.words(FeedFindings.rating(fuse.getAsDouble())))
              .with("current", Figure.amps(peak))
              .with("limit", Figure.amps(Fuses.MARGIN * peak))
              .at(BATTERY + ".fuseAmps")
              .in(report.table().scene(), report.measure().supply().peakFrame())
              .source(PRACTICE + ": fuse for 1.25 of the peak")
              .make());
    }
  }

  private static void fuse(Rig rig, Battery battery, Consumer<Finding> found) {
    double wires = PackLoad.wireLimitAmps(rig);
    if (battery.fuseAmps().isEmpty()) {
      double most = battery.packCurrent(wires, rig.supplyVolts());
      found.accept(
          Finding.of(Code.BATTERY_UNFUSED, PACK)
              .with(
                  "fuse",
                  Figure.words(
                      wires < Double.MAX_VALUE
                          ? "for at most "
                              + Figure.amps(most).text()
                              + ", which its wires may carry"
                          : "for at most what its wires may carry"))
              .at(BATTERY)
              .source(PRACTICE)
              .make());
      return;
    }
    double through = battery.rigCurrent(battery.fuseAmps().getAsDouble(), rig.supplyVolts());
    if (battery.regulator() != Regulator.NONE) {
      through = Math.min(through, rig.supplyLimitMilliamps() * 1e-3);
    }
    for (Chain chain : rig.chains()) {
      double passes = through;
      rig.feedOf(chain)
          .filter(feed -> feed.fuseAmps().isEmpty())
          .filter(feed -> !Fuses.protects(passes, Wiring.limitAmps(feed)))
          .ifPresent(
              feed ->
                  found.accept(
                      Finding.of(Code.BATTERY_FUSE_LARGE, PACK)
                          .with(
                              "fuse",
                              Figure.words(FeedFindings.rating(battery.fuseAmps().getAsDouble())))
                          .with("current", Figure.amps(passes))
                          .with("chain", Figure.words(chain.id()))
                          .with("limit", Figure.amps(Wiring.limitAmps(feed)))
                          .at(BATTERY + ".fuseAmps")
                          .source(FeedFindings.limitSource(feed))
                          .make()));
    }
  }

  private static void volts(Rig rig, Battery battery, Consumer<Finding> found) {
    if (battery.packVolts().isEmpty()) {
      found.accept(
          Finding.of(Code.BATTERY_VOLTS_UNSTATED, PACK)
              .with("limit", Figure.volts(rig.supplyVolts()))
              .at(BATTERY)
              .source("supply voltage of the rig")
              .make());
      return;
    }
    double pack = battery.packVolts().getAsDouble();
    boolean lowers =
        battery.regulator() == Regulator.BUCK || battery.regulator() == Regulator.LINEAR;
    boolean raises = battery.regulator() == Regulator.BOOST;
    if ((lowers && pack <= rig.supplyVolts()) || (raises && pack >= rig.supplyVolts())) {
      found.accept(
          Finding.of(Code.BATTERY_REGULATOR, PACK)
              .with("kind", Figure.words(battery.regulator().key()))
              .with("volts", Figure.volts(pack))
              .with("than", Figure.words(lowers ? "more than" : "less than"))
              .with("limit", Figure.volts(rig.supplyVolts()))
              .with(
                  "remedy",
                  Figure.words(
                      lowers
                          ? "use a boost regulator, or a pack of more cells"
                          : "use a buck regulator"))
              .at(BATTERY + ".regulator")
              .source(PRACTICE)
              .make());
    }
  }

  // Without a regulator pixels get the pack's own volts; a boost lets through what is above its
  // own.
  private static void pixels(Rig rig, Battery battery, Chain chain, Consumer<Finding> found) {
    if (battery.packVolts().isEmpty()
        || (battery.regulator() != Regulator.NONE && battery.regulator() != Regulator.BOOST)) {
      return;
    }
    SupplyNeeds needs = chain.type().needs();
    double supply = rig.supplyVolts();
    double pack = battery.volts(supply);
    double full = battery.fullVolts(supply);
    Finding.Draft draft;
    if (full > needs.maxVolts() && supply <= needs.maxVolts()) {
      draft =
          Finding.of(Code.BATTERY_OVER_VOLTAGE, PACK)
              .with("full", Figure.volts(full))
              .with("limit", Figure.volts(needs.maxVolts()))
              .source(PartSource.of(chain.type(), "maxVolts") + "; " + CELLS);
    } else if (battery.regulator() == Regulator.NONE
        && pack < needs.minVolts()
        && supply >= needs.minVolts()) {
      draft =
          Finding.of(Code.BATTERY_UNDER_VOLTAGE, PACK)
              .with("limit", Figure.volts(needs.minVolts()))
              .source(PartSource.of(chain.type(), "minVolts"));
    } else {
      return;
    }
    found.accept(
        draft
            .with("volts", Figure.volts(pack))
            .with("chain", Figure.words(chain.id()))
            .with("usual", Figure.words(Checks.plain(chain.type().volts()) + " V"))
            .at(BATTERY + ".packVolts")
            .make());
  }
}
