package lampwright.exporters.packed.play;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwright.engine.render.Ceiling;
import lampwright.exporters.packed.format.ShowFormat;

/**
 * Plays packed data by its show as the C player does: works out the situations frame by frame from
 * the tables, and starts the scenes of lamps. Not safe for use by several threads.
 */
public final class ShowPlayer {
  private static final int LEAST_US = 800;
  private static final int GREATEST_US = 2200;
  private static final int CENTRE_US = 1500;
  private static final int LEAST_CENTRE_US = 1400;
  private static final int GREATEST_CENTRE_US = 1600;
  private static final int LEARNT_FROM = 16;
  private static final int MOST_TAPS = 255;
  private static final int SAMPLE = 1;
  private static final int BEFORE = 2;
  private static final int ON = 4;

  private final Unpacker unpacker;
  private final ShowTables tables;
  private final Optional<Ceiling> ceiling;
  // Of a channel its width, and their sum while its centre is learnt; three bits of a switch.
  private final int[] value;
  private final int[] left;
  // How many widths were learnt from, then the centre.
  private final int[] centre;
  private final int[] slots;
  private final boolean[] condition;
  private final boolean[] active;
  private final boolean[] held;
  private int frame;

  /**
   * Reads and checks packed data.
   *
   * @throws PackedDataException if it can't be played, or has no show
   */
  public ShowPlayer(byte[] packed) {
    unpacker = new Unpacker(packed);
    PackedBytes data = unpacker.data();
    if (!unpacker.hasShow()) {
      throw PackedBytes.badContents(data.showAt);
    }
    int[] frames = new int[unpacker.scenes()];
    Arrays.setAll(frames, unpacker::frames);
    tables = new ShowTables(data, frames);
    ceiling =
        data.ceilingAt < data.size() ? Optional.of(CeilingTable.read(data)) : Optional.empty();
    value = new int[tables.inputs];
    left = new int[tables.inputs];
    centre = new int[tables.centres];
    slots = new int[tables.slots];
    condition = new boolean[tables.conditionBits];
    active = new boolean[tables.situations.size()];
    held = new boolean[active.length];
  }

  ShowRoom room() {
    return ShowRoom.of(tables);
  }

  /** Bytes of a frame. */
  public int frameBytes() {
    return unpacker.frameBytes();
  }

  /**
   * Takes a reading that ends before the next frame, or at its instant.
   *
   * @param input by its number
   * @param reading the width of a servo pulse in us, or the level of a switch's pin
   */
  public void take(int input, int reading) {
    ShowTables.TableInput table = tables.inputTables.get(input);
    if (table.kind() >= ShowFormat.SWITCH) {
      boolean on = (reading != 0) != (table.kind() == ShowFormat.ACTIVE_LOW);
      value[input] = (value[input] & ~SAMPLE) | (on ? SAMPLE : 0);
      return;
    }
    if (reading < LEAST_US || reading > GREATEST_US) {
      return;
    }
    int from = CENTRE_US;
    if (table.kind() == ShowFormat.LEARNS) {
      int learnt = centre[table.centre()];
      if (learnt < LEARNT_FROM) {
        value[input] += reading;
        centre[table.centre()] = ++learnt;
        if (learnt < LEARNT_FROM) {
          return;
        }
        int mean = value[input] / LEARNT_FROM;
        centre[table.centre()] =
            mean < LEAST_CENTRE_US || mean > GREATEST_CENTRE_US ? CENTRE_US : mean;
      }
      from = centre[table.centre()];
    }
    value[input] = reading - from + CENTRE_US;
    left[input] = table.lost() + 1;
  }

  /**
   * Brings the buffer to the next frame.
   *
   * @param buffer has to keep its bytes from one frame to the next; dark before the first
   */
  public void frame(byte[] buffer) {
    for (int i = 0; i < value.length; i++) {
      if (tables.inputTables.get(i).kind() < ShowFormat.SWITCH) {
        left[i] -= left[i] > 0 ? 1 : 0;
      } else {
        int sample = value[i] & SAMPLE;
        boolean agree = (value[i] & BEFORE) == sample * BEFORE;
        value[i] = sample | (sample * BEFORE) | (agree ? sample * ON : value[i] & ON);
      }
    }
    boolean[] before = active.clone();
    for (int i = 0; i < active.length; i++) {
      situation(i, tables.situations.get(i));
    }
    for (int lamp = 0; lamp < tables.lamps.size(); lamp++) {
      int now = owner(lamp, active);
      if (now != owner(lamp, before)) {
        start(lamp, now, buffer);
      }
    }
    unpacker.frame(buffer);
    frame++;
  }

  /**
   * A frame as it is sent: below the ceiling, if the data has one.
   *
   * @param buffer that {@link #frame} brought to the frame; stays as it is
   */
  public byte[] sent(byte[] buffer) {
    byte[] sent = Arrays.copyOf(buffer, frameBytes());
    ceiling.ifPresent(limit -> limit.apply(sent));
    return sent;
  }

  /** Whether a situation is active in the frame played last. */
  public boolean active(int situation) {
    return active[situation];
  }

  private int owner(int lamp, boolean[] of) {
    int owner = ShowFormat.NONE;
    for (int situation : tables.lamps.get(lamp)) {
      owner = of[situation] ? situation : owner;
    }
    return owner;
  }

  private void start(int lamp, int situation, byte[] buffer) {
    if (situation == ShowFormat.NONE) {
      unpacker.dark(lamp, buffer);
      return;
    }
    ShowTables.TableSituation table = tables.situations.get(situation);
    int count = unpacker.frames(table.scene());
    int at =
        table.clock() != ShowFormat.NONE
            ? slots[table.clock()]
            : unpacker.loops(table.scene()) ? frame % count : Math.min(frame, count - 1);
    unpacker.select(lamp, table.scene(), at, buffer);
  }

  private void situation(int number, ShowTables.TableSituation table) {
    // Each at every frame: one that isn't looked at would miss taps.
    List<Boolean> on = new ArrayList<>();
    table.conditions().forEach(one -> on.add(condition(one)));
    boolean any = table.has(ShowFormat.ANY);
    boolean holds = any ? on.contains(true) : !on.contains(false);
    if (table.after().isPresent()) {
      ShowTables.Timer after = table.after().get();
      boolean longEnough = slots[after.slot()] >= after.frames();
      slots[after.slot()] = holds ? Math.min(slots[after.slot()] + 1, after.frames()) : 0;
      holds &= longEnough;
    }
    boolean was = active[number];
    if (table.has(ShowFormat.TOGGLES)) {
      active[number] ^= holds && !held[number];
      held[number] = holds;
    } else if (table.linger().isPresent()) {
      int slot = table.linger().get().slot();
      slots[slot] = holds ? table.linger().get().frames() : Math.max(slots[slot] - 1, 0);
      active[number] = holds || slots[slot] > 0;
    } else {
      active[number] = holds;
    }
    table.last().filter(last -> active[number]).ifPresent(last -> tick(last, was, table));
    if (table.asked().isPresent() && !active[number]) {
      ShowTables.Timer asked = table.asked().get();
      slots[asked.slot()] = was ? asked.frames() : Math.max(slots[asked.slot()] - 1, 0);
    }
  }

  private void tick(ShowTables.Timer last, boolean was, ShowTables.TableSituation table) {
    int at = was ? slots[last.slot()] + 1 : 0;
    slots[last.slot()] = at <= last.frames() ? at : table.has(ShowFormat.LOOPS) ? 0 : last.frames();
  }

  private boolean condition(ShowTables.TableCondition table) {
    boolean before = table.bit() >= 0 && condition[table.bit()];
    boolean on =
        switch (table.kind()) {
          case ShowFormat.WIDTH -> width(table, before);
          case ShowFormat.LOST -> left[table.subject()] == 0;
          case ShowFormat.ON -> (value[table.subject()] & ON) != 0;
          case ShowFormat.ACTIVE -> active[table.subject()];
          case ShowFormat.ENDED ->
              !active[table.subject()]
                  && slots[table.ended().orElseThrow().slot()]
                      > table.ended().orElseThrow().frames();
          default -> false;
        };
    on ^= table.not();
    if (table.bit() >= 0) {
      condition[table.bit()] = on;
    }
    return table.taps().isPresent() ? taps(table.taps().get(), on, before) : on;
  }

  private boolean width(ShowTables.TableCondition table, boolean before) {
    int us = value[table.subject()];
    ShowTables.Width width = table.width().orElseThrow();
    if (left[table.subject()] == 0
        || us < width.from() - width.hysteresis()
        || us > width.to() + width.hysteresis()) {
      return false;
    }
    return before || (us >= width.from() && us <= width.to());
  }

  private boolean taps(ShowTables.Taps taps, boolean on, boolean before) {
    int count = slots[taps.countSlot()];
    int spell = slots[taps.slot()];
    boolean counted = false;
    if (on) {
      spell = before ? Math.min(spell + 1, taps.longest() + 1) : 1;
    } else {
      if (before) {
        count = spell <= taps.longest() ? Math.min(count + 1, MOST_TAPS) : 0;
        spell = 0;
      } else {
        spell = Math.min(spell + 1, taps.pause());
      }
      if (count != 0 && spell >= taps.pause()) {
        counted = count == taps.count();
        count = 0;
      }
    }
    slots[taps.countSlot()] = count;
    slots[taps.slot()] = spell;
    return counted;
  }
}
