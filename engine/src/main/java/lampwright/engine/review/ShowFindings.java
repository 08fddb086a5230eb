package lampwright.engine.review;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.Fuses;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.meter.Wiring;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;

/**
 * What situations that are active together ask of supply and eye beyond what a scene of them asks
 * alone: that is told of the scene.
 */
final class ShowFindings {
  private static final double MILLI = 1e-3;
  private static final String WCAG =
      TradeNumbers.get("flash caution", "flashes in one second").citation();
  private static final String FUSE_SOURCE = "common practice: fuse for 1.25 of the peak";

  private final Rig rig;
  private final ShowMeasure measure;
  private final Consumer<Finding> found;

  private ShowFindings(Project project, ShowMeasure measure, Consumer<Finding> found) {
    this.rig = project.rig();
    this.measure = measure;
    this.found = found;
  }

  static void find(Project project, ShowMeasure measure, Consumer<Finding> found) {
    ShowFindings findings = new ShowFindings(project, measure, found);
    findings.supply();
    findings.battery();
    for (int i = 0; i < project.rig().chains().size(); i++) {
      findings.chain(project.rig().chains().get(i), i);
    }
    findings.flashes();
    findings.dark();
  }

  private static Figure names(List<String> situations) {
    return Figure.words(situations.stream().collect(Collectors.joining(", ")));
  }

  private static Finding.Draft draft(Code code, Subject subject, ShowMeasure.Bound bound) {
    return Finding.of(code, subject)
        .with("situations", names(bound.situations()))
        .with("bound", Figure.words(bound.exact() ? "exactly" : "at most"));
  }

  private void supply() {
    ShowMeasure.Bound bound = measure.supply();
    if (!bound.exceeds(rig.supplyLimitMilliamps())) {
      return;
    }
    OptionalDouble share = measure.ceilingShare(rig);
    if (share.isPresent()) {
      found.accept(
          draft(Code.SITUATIONS_CEILING, new Subject.Supply(), bound)
              .with("current", Figure.milliamps(bound.milliamps()))
              .with("bottom", Figure.words(bound.exact() ? "about" : "at worst about"))
              .with("share", Figure.percent(share.getAsDouble()))
              .with("limit", Figure.milliamps(rig.supplyLimitMilliamps()))
              .at("rig.supplyLimitMilliamps")
              .source("supply current limit of the rig")
              .make());
    } else {
      found.accept(
          draft(Code.SITUATIONS_CURRENT, new Subject.Supply(), bound)
              .with("current", Figure.milliamps(bound.milliamps()))
              .with("what", Figure.words("limit"))
              .with("limit", Figure.milliamps(rig.supplyLimitMilliamps()))
              .at("rig.supplyLimitMilliamps")
              .source("supply current limit of the rig")
              .make());
    }
  }

  private void battery() {
    OptionalDouble fuse = rig.battery().map(Battery::fuseAmps).orElse(OptionalDouble.empty());
    if (fuse.isEmpty()) {
      return;
    }
    Battery battery = rig.battery().orElseThrow();
    ShowMeasure.Bound bound = measure.sent(rig, measure.supply());
    double amps = MILLI * battery.packCurrent(bound.milliamps(), rig.supplyVolts());
    double alone =
        MILLI * battery.packCurrent(measure.supply().sceneMilliamps(), rig.supplyVolts());
    if (Fuses.carries(fuse.getAsDouble(), alone)) {
      fuse(new Subject.Pack(), bound, fuse.getAsDouble(), amps, "rig.battery.fuseAmps");
    }
  }

  private void fuse(
      Subject subject, ShowMeasure.Bound bound, double fuse, double amps, String path) {
    if (!Fuses.carries(fuse, amps)) {
      found.accept(
          draft(Code.SITUATIONS_FUSE, subject, bound)
              .with("fuse", Figure.words(FeedFindings.rating(fuse)))
              .with("current", Figure.amps(amps))
              .with("limit", Figure.amps(Fuses.MARGIN * amps))
              .at(path)
              .source(FUSE_SOURCE)
              .make());
    }
  }

  // Of a chain that is fed at both ends no lead carries all.
  private void chain(Chain chain, int place) {
    rig.feedOf(chain)
        .filter(feed -> feed.ends() == Ends.ONE)
        .ifPresent(feed -> lead(chain, feed, FeedFindings.path(rig, place)));
  }

  private void lead(Chain chain, Feed feed, String path) {
    ShowMeasure.Bound bound = measure.sent(rig, measure.chain(chain.id()));
    Subject subject = new Subject.OneChain(chain.id());
    // Of one pixel nothing goes on along the strip.
    double limit = chain.pixels() == 1 ? Wiring.leadLimitAmps(feed) : Wiring.limitAmps(feed);
    if (bound.exceeds(limit / MILLI)) {
      found.accept(
          draft(Code.SITUATIONS_CURRENT, subject, bound)
              .with("current", Figure.amps(MILLI * bound.milliamps()))
              .with("what", Figure.words("its supply wires are rated for"))
              .with("limit", Figure.amps(limit))
              .at(path)
              .source(FeedFindings.limitSource(feed))
              .make());
    }
    OptionalDouble fuse = feed.fuseAmps();
    if (fuse.isPresent() && Fuses.carries(fuse.getAsDouble(), MILLI * bound.sceneMilliamps())) {
      fuse(subject, bound, fuse.getAsDouble(), MILLI * bound.milliamps(), path + ".fuseAmps");
    }
  }

  private void flashes() {
    measure
        .flashes()
        .filter(ShowMeasure.Flashes::adds)
        .ifPresent(
            flashes ->
                found.accept(
                    Finding.of(Code.SITUATIONS_FLASHES, new Subject.WholeModel())
                        .with("situations", names(flashes.situations()))
                        .with("flashes", Figure.count(flashes.perSecond()))
                        .with("limit", Figure.count(FlashCaution.MOST_FLASHES, Unit.PER_SECOND))
                        .at("situations")
                        .source(WCAG)
                        .make()));
  }

  private void dark() {
    for (int i = 0; i < rig.lamps().size(); i++) {
      Lamp lamp = rig.lamps().get(i);
      if (measure.darkLamps().contains(lamp.id())) {
        found.accept(
            Finding.of(Code.LAMP_DARK_IN_SITUATIONS, Subject.OneLamp.of(lamp))
                .at("rig.lamps[" + i + "]")
                .make());
      }
    }
  }
}
