package lampwright.engine.situation;

import lampwright.engine.rig.Input;

/** What is known of an input, frame by frame. */
sealed interface InputReading permits ChannelReading, SwitchReading {
  static InputReading of(Input input, ShowClock clock) {
    return input.isChannel()
        ? new ChannelReading(input, clock)
        : new SwitchReading(input.activeLow());
  }

  /**
   * Takes a reading that has ended since the last frame: a width in us, or the level of the pin.
   */
  void take(int value);

  /** Decides what the next frame sees. */
  void frame();

  /** Whether a channel is lost in this frame; a switch never is. */
  boolean lost();

  /** A channel's width, us from a centre of 1,500; 1 or 0 of a switch. Undefined while lost. */
  int value();
}
