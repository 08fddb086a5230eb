package lampwright.engine.situation;

/**
 * Looks at the width of a channel's pulses. Above, below and between are the same with other ends:
 * on from one to another, off outside two more, in between as before.
 */
final class WidthProbe implements Probe {
  /** Wider than any width that is valid, also after its centre has moved it. */
  private static final int WIDEST = 30_000;

  private final InputReading channel;
  private final int onFrom;
  private final int onTo;
  private final int offBelow;
  private final int offAbove;
  private boolean on;

  WidthProbe(InputReading channel, Criterion.Width width) {
    this.channel = channel;
    int h = width.hysteresisUs();
    if (width instanceof Criterion.Above above) {
      onFrom = above.aboveUs() + 1;
      onTo = WIDEST;
      offBelow = above.aboveUs() - h;
      offAbove = WIDEST;
    } else if (width instanceof Criterion.Below below) {
      onFrom = -WIDEST;
      onTo = below.belowUs() - 1;
      offBelow = -WIDEST;
      offAbove = below.belowUs() + h;
    } else {
      Criterion.Between between = (Criterion.Between) width;
      onFrom = between.fromUs();
      onTo = between.toUs();
      offBelow = onFrom - h;
      offAbove = onTo + h;
    }
  }

  @Override
  public boolean frame() {
    int us = channel.value();
    if (channel.lost() || us < offBelow || us > offAbove) {
      on = false;
    } else if (us >= onFrom && us <= onTo) {
      on = true;
    }
    return on;
  }
}
