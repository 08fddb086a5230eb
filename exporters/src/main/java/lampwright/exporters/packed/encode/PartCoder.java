package lampwright.exporters.packed.encode;

/** Codes one lamp of one scene; lamps may be coded on two threads at once. */
@FunctionalInterface
interface PartCoder {
  /**
   * Codes it.
   *
   * @param lamp the lamp's number
   * @param levels how quick the code has to be
   */
  LampPart part(SceneCoder scene, int lamp, SpeedLevels levels);
}
