package lampwright.engine.situation;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalInt;

/**
 * What the inputs of a model read while it is driven.
 *
 * @param rows in order of time
 */
public record Drive(List<Row> rows) {
  /** The latest instant of a row: a day. */
  public static final long MAX_MS = 86_400_000;

  public static final int MAX_ROWS = 1_000_000;

  /** The widest pulse that can be recorded, us. */
  public static final int MAX_VALUE = 1_000_000;

  /**
   * One reading.
   *
   * @param ms when a servo pulse ends, or a switch is read
   * @param input by its place in the rig
   * @param value the width of a servo pulse in us, or the level of a switch's pin, 0 or 1
   */
  public record Row(BigDecimal ms, int input, int value) {}

  public Drive {
    rows = List.copyOf(rows);
  }

  /** How many frames there are to the instant of the last row; none if there is no row. */
  public OptionalInt frames(ShowClock clock) {
    return rows.isEmpty()
        ? OptionalInt.empty()
        : OptionalInt.of(clock.floor(rows.get(rows.size() - 1).ms()) + 1);
  }

  /** Hands the rows over to a machine, frame by frame. Not safe for use by several threads. */
  public static final class Player {
    private final Drive drive;
    private final ShowClock clock;
    private int next;

    public Player(Drive drive, ShowClock clock) {
      this.drive = drive;
      this.clock = clock;
    }

    /** Lets a machine take all that its next frame sees, and no more. */
    public void feed(ShowMachine machine) {
      int frame = machine.frame() + 1;
      while (next < drive.rows().size() && clock.ceiling(drive.rows().get(next).ms()) <= frame) {
        Row row = drive.rows().get(next++);
        machine.take(row.input(), row.value());
      }
    }
  }
}
