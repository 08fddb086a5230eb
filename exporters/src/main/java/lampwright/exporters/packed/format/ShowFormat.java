package lampwright.exporters.packed.format;

/**
 * The byte layout of a show: the tables of situations, from the end of the scenes' tables to the
 * end of packed data that has {@link Format#SHOW} among its flags. T is a number of as many bytes
 * as the first byte says; a slot is a counter of the player, by number.
 *
 * <pre>
 *   head       bytes of T (1, 2 or 4) | inputs | centres | situations | slots | condition bits / 8,
 *              rounded up
 *   inputs     inputs x { kind, + number of its centre (1) | lost after (T) }
 *   scenes     situations x { scene or NONE (1) | slot of its clock or NONE (1) }
 *   situations situations x { flags (1) | conditions (1) | conditions x condition
 *              | AFTER: slot (1), frames (T) | LINGERS: slot (1), frames (T)
 *              | CLOCK: slot (1), last frame (T) | ASKED: slot (1), frames (T) }
 *   condition  kind (1) | input, situation or 0 (1) | WIDTH: from (2, signed), to (2, signed),
 *              width of the hysteresis (2) | ENDED: slot (1), frames left (T)
 *              | TAPS: slot (1), longest tap (T), slot of the count (1), pause after (T), taps (1)
 *   lamps      lamps x { situations (1) | situations, the highest priority last (1 each) }
 * </pre>
 */
public final class ShowFormat {
  /** No scene; a clock that all situations share. */
  public static final int NONE = 255;

  /** Most situations, slots and inputs: one number is {@link #NONE}. */
  public static final int MOST = 254;

  // Kinds of an input; the number of its centre, for those that learn it, is in the bits above.
  public static final int CHANNEL = 0;
  public static final int LEARNS = 1;
  public static final int SWITCH = 2;
  public static final int ACTIVE_LOW = 3;
  public static final int INPUT_KIND_MASK = 3;
  public static final int CENTRE_SHIFT = 2;

  /** Most inputs that learn their centre. */
  public static final int MOST_CENTRES = 64;

  // Flags of a situation.
  public static final int ANY = 1;
  public static final int TOGGLES = 2;
  public static final int AFTER = 4;
  public static final int LINGERS = 8;
  public static final int CLOCK = 16;
  public static final int LOOPS = 32;
  public static final int ASKED = 64;
  public static final int SITUATION_FLAGS = 127;

  // Kinds of a condition.
  public static final int NEVER = 0;
  public static final int WIDTH = 1;
  public static final int LOST = 2;
  public static final int ON = 3;
  public static final int ACTIVE = 4;
  public static final int ENDED = 5;
  public static final int CONDITION_KIND_MASK = 0x3F;

  /** With {@link #ON} and {@link #ACTIVE}: the other way round. */
  public static final int NOT = 0x40;

  public static final int TAPS = 0x80;

  /** Wider than any width, also after its centre has moved it. */
  public static final int WIDEST_US = 20_000;

  private ShowFormat() {}
}
