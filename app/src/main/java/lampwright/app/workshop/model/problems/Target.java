package lampwright.app.workshop.model.problems;

import lampwright.app.workshop.edit.CueRef;

/** The spot to which a problem leads. */
public sealed interface Target {
  /** A part of the rig's settings. */
  enum RigPart {
    SUPPLY,
    BATTERY,
    CONTROLLER,
    CHAINS
  }

  /** A lamp, by its id. */
  record OfLamp(String id) implements Target {}

  /** A chain, by its id. */
  record OfChain(String id) implements Target {}

  /** A driver output, by its id. */
  record OfOutput(String id) implements Target {}

  /** An input, by its id. */
  record OfInput(String id) implements Target {}

  /** A situation, by its id. */
  record OfSituation(String id) implements Target {}

  /** Settings of the rig as a whole. */
  record OfRig(RigPart part) implements Target {}

  /** A scene, by its id. */
  record OfScene(String id) implements Target {}

  /** A cue of a scene. */
  record OfCue(String scene, CueRef cue) implements Target {}
}
