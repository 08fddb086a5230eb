package lampwright.app.workshop.edit;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Rig;

/** The values of a rig beside its parts, to change some of them at once. */
final class RigDraft {
  double supplyVolts;
  double supplyLimitMilliamps;
  OptionalDouble dataVolts;
  Curve curve;
  ColourMatching colourMatching;
  boolean whiteFromRgb;
  double brightnessCap;
  CurrentCap currentCap;
  Optional<Feed> feed;
  Optional<Battery> battery;
  Optional<Controller> controller;

  private RigDraft(Rig rig) {
    supplyVolts = rig.supplyVolts();
    supplyLimitMilliamps = rig.supplyLimitMilliamps();
    dataVolts = rig.dataVolts();
    curve = rig.curve();
    colourMatching = rig.colourMatching();
    whiteFromRgb = rig.whiteFromRgb();
    brightnessCap = rig.brightnessCap();
    currentCap = rig.currentCap();
    feed = rig.feed();
    battery = rig.battery();
    controller = rig.controller();
  }

  /** The rig with some values changed. */
  static Rig changed(Rig rig, Consumer<RigDraft> change) {
    RigDraft draft = new RigDraft(rig);
    change.accept(draft);
    return new Rig(
        draft.supplyVolts,
        draft.supplyLimitMilliamps,
        draft.dataVolts,
        draft.curve,
        draft.colourMatching,
        draft.whiteFromRgb,
        draft.brightnessCap,
        draft.currentCap,
        draft.feed,
        draft.battery,
        draft.controller,
        rig.chains(),
        rig.outputs(),
        rig.lamps());
  }
}
