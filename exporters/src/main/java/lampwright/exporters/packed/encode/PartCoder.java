package lampwright.exporters.packed.encode;

/** Codes one lamp of one scene. */
@FunctionalInterface
interface PartCoder {
  /**
   * Codes it.
   *
   * @param lamp the lamp's number
   * @param haste 0 for the shortest code, up to {@link LampCoder#MOST_HASTE} for quicker ones
   */
  LampPart part(SceneCoder scene, int lamp, int haste);
}
