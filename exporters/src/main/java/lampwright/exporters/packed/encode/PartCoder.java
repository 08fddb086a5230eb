package lampwright.exporters.packed.encode;

/** Codes one lamp of one scene; lamps may be coded on two threads at once. */
@FunctionalInterface
interface PartCoder {
  /**
   * Codes it.
   *
   * @param lamp the lamp's number
   * @param speedLevel 0 for the shortest code, up to {@link LampCoder#MAX_SPEED_LEVEL} for quicker
   *     ones
   */
  LampPart part(SceneCoder scene, int lamp, int speedLevel);
}
