package lampwright.app.workshop.model;

import lampwright.app.workshop.edit.CueRef;

/** A place in the project that a gauge or a problem leads to. */
public sealed interface Spot {
  /** A frame of the scene on the bench. */
  record Frame(int frame) implements Spot {}

  /** A lamp, by id. */
  record OfLamp(String lamp) implements Spot {}

  /** A chain, by id. */
  record OfChain(String chain) implements Spot {}

  /** A driver output, by id. */
  record OfOutput(String output) implements Spot {}

  /** A cue of the scene on the bench. */
  record OfCue(CueRef cue) implements Spot {}

  /** A scene, by id. */
  record OfScene(String scene) implements Spot {}

  /** The supply of the rig. */
  record Supply() implements Spot {}

  /** The controller of the rig. */
  record TheController() implements Spot {}
}
