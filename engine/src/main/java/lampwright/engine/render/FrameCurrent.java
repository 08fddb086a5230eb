package lampwright.engine.render;

import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;

/**
 * The current that a frame draws: the idle current of every pixel, and the current of every emitter
 * and output in proportion to its duty.
 */
public final class FrameCurrent {
  private static final double FULL = 255;

  private final double idleMilliamps;
  private final double[] fullMilliamps;

  public FrameCurrent(FrameLayout layout) {
    double idle = 0;
    fullMilliamps = new double[layout.bytes()];
    int next = 0;
    for (Chain chain : layout.rig().chains()) {
      idle += chain.pixels() * chain.type().idleMilliamps();
      for (int pixel = 0; pixel < chain.pixels(); pixel++) {
        for (var emitter : chain.order().emitters()) {
          fullMilliamps[next++] = chain.type().emitters().get(emitter).milliamps();
        }
      }
    }
    for (DriverOutput output : layout.rig().outputs()) {
      fullMilliamps[next++] = output.milliamps();
    }
    idleMilliamps = idle;
  }

  /** What all pixels draw when dark, in mA. */
  public double idleMilliamps() {
    return idleMilliamps;
  }

  /** What the emitter or output behind a byte draws at full duty, in mA. */
  public double fullMilliamps(int column) {
    return fullMilliamps[column];
  }

  /** Current of a frame in mA. */
  public double milliamps(byte[] frame) {
    return idleMilliamps + milliamps(frame, 0, fullMilliamps.length);
  }

  /** Current of a part of a frame in mA, without idle. */
  public double milliamps(byte[] frame, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += fullMilliamps[i] * (frame[i] & 0xFF);
    }
    return sum / FULL;
  }

  /** Current of some bytes of a frame in mA, without idle. */
  public double milliamps(byte[] frame, int[] columns) {
    double sum = 0;
    for (int column : columns) {
      sum += fullMilliamps[column] * (frame[column] & 0xFF);
    }
    return sum / FULL;
  }
}
