package lampwright.engine.situation;

import lampwright.engine.rig.Centre;
import lampwright.engine.rig.Input;

/** Reads servo pulses: leaves out those that can't be any, learns the centre, notices a loss. */
final class ChannelReading implements InputReading {
  static final int LEAST_US = 800;
  static final int GREATEST_US = 2200;
  static final int CENTRE_US = 1500;
  static final int LEARNT_FROM = 16;
  private static final int LEAST_CENTRE_US = 1400;
  private static final int GREATEST_CENTRE_US = 1600;

  private final int lostFrames;
  private int toLearn;
  // At most 16 x 2,200.
  private int sumUs;
  private int centreUs = CENTRE_US;
  private int widthUs;
  private boolean fresh;
  private boolean seen;
  private int age;

  ChannelReading(Input input, ShowClock clock) {
    this.lostFrames = clock.ceiling(input.lostAfterMs());
    this.toLearn = input.centre() == Centre.POWER_UP ? LEARNT_FROM : 0;
  }

  @Override
  public void take(int us) {
    if (us < LEAST_US || us > GREATEST_US) {
      return;
    }
    widthUs = us;
    fresh = true;
    if (toLearn > 0) {
      sumUs += us;
      toLearn--;
      if (toLearn == 0) {
        int mean = sumUs / LEARNT_FROM;
        centreUs = mean < LEAST_CENTRE_US || mean > GREATEST_CENTRE_US ? CENTRE_US : mean;
      }
    }
  }

  @Override
  public void frame() {
    age = fresh ? 0 : Counter.next(age);
    seen |= fresh;
    fresh = false;
  }

  @Override
  public boolean lost() {
    return !seen || toLearn > 0 || age >= lostFrames;
  }

  @Override
  public int value() {
    return widthUs - centreUs + CENTRE_US;
  }
}
