package lampwright.exporters.target;

import lampwright.exporters.packed.play.DecodeCost;
import lampwright.exporters.packed.play.PlayerStep;

/**
 * What the player takes on an AVR, with columns of one byte.
 *
 * <p>Source: our own count over the instructions of {@code lampwright_player_avr.S}. {@code
 * PlayerTest} holds the sum of a scene against the cycle-exact simulator: within a tenth for every
 * scene of the corpus.
 */
enum AvrDecodeCost implements DecodeCost {
  /** An ATmega328P at 16 MHz. */
  AT_16_MHZ;

  @Override
  public double megahertz() {
    return 16;
  }

  @Override
  public int cycles(PlayerStep step) {
    return switch (step) {
      case FRAME -> 152;
      case LAMP -> 16;
      case MOVE -> 36;
      case INSTRUCTION -> 86;
      case ENTRY -> 44;
      case AGAIN -> 24;
      case PATCH -> 36;
      case PATCH_BYTE -> 10;
      case ROW -> 22;
      case ROW_GROUP -> 32;
      case ROW_BYTE -> 10;
      case BITS -> 34;
      case FLAG -> 8;
      case SLOT -> 25;
      case SCALED_SLOT -> 20;
      case BIT -> 6;
      case NEXT_BYTE -> 19;
      case WAVE -> 70;
      case WAVE_GROUP -> 86;
      case WAVE_SLOT -> 33;
      case SPAN -> 28;
      case ECHOES -> 9;
      case ECHO -> 46;
      case ECHO_BYTE -> 11;
      case PLAIN -> 36;
      case PLAIN_BYTE -> 9;
    };
  }

  /**
   * What {@link #cycles} comes to, about: MOVE, ROW, BITS and ECHOES make a row; SLOT and a little
   * of ROW_GROUP a slot; BIT and some of NEXT_BYTE, of which eight bits share one, a bit; ECHO_BYTE
   * a copy.
   */
  @Override
  public RowCost row() {
    return new RowCost(100, 28, 7, 11);
  }
}
