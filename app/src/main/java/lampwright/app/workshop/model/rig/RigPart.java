package lampwright.app.workshop.model.rig;

/** A part of the project that has a form of its own. */
public sealed interface RigPart {
  /** The project's name, supply, wires, battery and controller, and how colours become light. */
  record Supply() implements RigPart {}

  /** A chain, by id. */
  record OfChain(String id) implements RigPart {}

  /** A driver output, by id. */
  record OfOutput(String id) implements RigPart {}

  /** An input, by id. */
  record OfInput(String id) implements RigPart {}

  /** A lamp, by id. */
  record OfLamp(String id) implements RigPart {}

  /** A pixel type of the project's own, by id. */
  record OfType(String id) implements RigPart {}

  /** A scene, by id. */
  record OfScene(String id) implements RigPart {}
}
