package lampwright.exporters.packed.play;

/** What playing packed data costs on one kind of controller. Immutable; a target gives it. */
public interface DecodeCost {
  /** Clock, cycles a microsecond, more than 0. */
  double megahertz();

  /** Clock cycles of a step, 0 or more. */
  int cycles(PlayerStep step);

  /** What a row of bits costs, about: enough to choose between ways to code frames. */
  RowCost row();

  /**
   * Clock cycles of a row of bits as a sum of four parts, each 0 or more.
   *
   * @param row the row, beside its slots
   * @param slot a slot, beside its bits and copies
   * @param bit a bit of a slot
   * @param copy a column that takes over the value of a slot
   */
  record RowCost(int row, int slot, int bit, int copy) {}
}
