package lampwright.exporters.packed.encode;

import java.util.List;
import java.util.Optional;

/** Packed data that was proved by decoding. Immutable. */
public final class Packed {
  private final byte[] data;
  private final List<StandIn> standIns;

  /**
   * A lamp of a scene for which a plainer coding is used, because a shorter or quicker one did not
   * decode to the scene's frames. What is played is right; that it had to be so is a fault of the
   * program.
   *
   * @param scene the scene's id
   * @param lamp the lamp's id; none for the whole frame, and for bytes that belong to no lamp
   */
  public record StandIn(String scene, Optional<String> lamp) {}

  Packed(byte[] data, List<StandIn> standIns) {
    this.data = data.clone();
    this.standIns = List.copyOf(standIns);
  }

  /** The bytes. */
  public byte[] data() {
    return data.clone();
  }

  /** How many bytes. */
  public int size() {
    return data.length;
  }

  /** What had to be coded plainer than it should have been; empty where all is well. */
  public List<StandIn> standIns() {
    return standIns;
  }
}
