package lampwright.exporters.packed.play;

import lampwright.exporters.packed.format.ShowFormat;

/**
 * What a player needs for the show of packed data: room, and which parts of its code.
 *
 * @param timeBytes bytes of a counter
 * @param conditionBytes of what conditions remember
 * @param uses in the bits of {@code LAMPWRIGHT_USES} of lampwright_situations.c
 */
public record ShowRoom(
    int timeBytes,
    int inputs,
    int centres,
    int situations,
    int slots,
    int conditionBytes,
    int uses) {
  private static final int SWITCHES = 0x100;
  private static final int CENTRES = 0x200;
  private static final int TAPS = 0x400;
  private static final int OTHERS = 0x800;
  private static final int ENDED = 0x1000;

  /**
   * What packed data needs.
   *
   * @throws PackedDataException if it can't be played, or has no show
   */
  public static ShowRoom of(byte[] packed) {
    return new ShowPlayer(packed).room();
  }

  /** Working memory that lampwright_situations_avr.S keeps it in. */
  public int assemblerBytes() {
    return Math.max(1, conditionBytes)
        + Math.max(1, inputs) * (2 + timeBytes)
        + centres
        + situations
        + Math.max(1, slots) * timeBytes
        + Integer.BYTES;
  }

  /** Working memory that lampwright_situations.c keeps it in, at most. */
  public int portableBytes() {
    int input = timeBytes == Integer.BYTES ? 2 * Integer.BYTES : 2 * Short.BYTES;
    return Math.max(1, conditionBytes)
        + Math.max(1, inputs) * input
        + Math.max(1, centres) * Short.BYTES
        + situations
        + Math.max(1, slots) * timeBytes
        + Integer.BYTES;
  }

  static ShowRoom of(ShowTables tables) {
    int uses = tables.centres > 0 ? CENTRES : 0;
    for (ShowTables.TableInput input : tables.inputTables) {
      uses |= input.kind() >= ShowFormat.SWITCH ? SWITCHES : 0;
    }
    for (ShowTables.TableSituation situation : tables.situations) {
      uses |= situation.flags();
      for (ShowTables.TableCondition condition : situation.conditions()) {
        uses |= condition.taps().isPresent() ? TAPS : 0;
        uses |= condition.kind() >= ShowFormat.ACTIVE ? OTHERS : 0;
        uses |= condition.kind() == ShowFormat.ENDED ? ENDED : 0;
      }
    }
    return new ShowRoom(
        tables.timeBytes,
        tables.inputs,
        tables.centres,
        tables.situations.size(),
        tables.slots,
        tables.conditionBits / Byte.SIZE,
        uses);
  }
}
