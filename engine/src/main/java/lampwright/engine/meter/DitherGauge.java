package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;

/**
 * Finds how far dithering alternates bytes that are meant to stay as they are: of each lamp the
 * emitter at the lowest bytes, where the step between two is largest.
 */
final class DitherGauge implements FrameGauge {
  /** One byte of a frame. */
  private final class Emitter {
    final int pixel;
    final int column;
    int low;
    int high;
    SecondWindow window = new SecondWindow(second);
    Optional<DitherFlicker> worst = Optional.empty();

    Emitter(int pixel, int column) {
      this.pixel = pixel;
      this.column = column;
    }

    void turn(int frame, int from, int to) {
      int newLow = Math.min(from, to);
      int newHigh = Math.max(from, to);
      if (newLow != low || newHigh != high) {
        low = newLow;
        high = newHigh;
        window = new SecondWindow(second);
      }
      window.add(frame);
      int hertz = window.mostPairs();
      if (hertz > 0 && worst.filter(w -> !isWorse(high, hertz, w)).isEmpty()) {
        worst = Optional.of(new DitherFlicker(pixel, low, high, hertz));
      }
    }
  }

  private final int second;
  private final List<List<Emitter>> lamps = new ArrayList<>();
  private final FrameCursor meantCursor;
  private final byte[] meant;
  private final byte[] meantBefore;
  private final byte[] before;

  /**
   * @param meant the scene without dithering
   * @param lights of each lamp, pixel by pixel
   */
  DitherGauge(FrameTable meant, List<List<LampLight>> lights) {
    this.second = SecondWindow.frames(meant.framesPerSecond());
    this.meantCursor = meant.cursor();
    this.meant = new byte[meant.layout().bytes()];
    this.meantBefore = new byte[this.meant.length];
    this.before = new byte[this.meant.length];
    for (List<LampLight> pixels : lights) {
      List<Emitter> emitters = new ArrayList<>();
      for (int k = 0; k < pixels.size(); k++) {
        for (int column : pixels.get(k).columns()) {
          emitters.add(new Emitter(k, column));
        }
      }
      lamps.add(emitters);
    }
  }

  @Override
  public void frame(int frame, byte[] bytes) {
    meantCursor.next(meant);
    if (frame > 0) {
      for (List<Emitter> lamp : lamps) {
        for (Emitter emitter : lamp) {
          int c = emitter.column;
          if (bytes[c] != before[c] && meant[c] == meantBefore[c]) {
            emitter.turn(frame, before[c] & 0xFF, bytes[c] & 0xFF);
          }
        }
      }
    }
    System.arraycopy(bytes, 0, before, 0, before.length);
    System.arraycopy(meant, 0, meantBefore, 0, meant.length);
  }

  /** The worst that was found of a lamp. */
  Optional<DitherFlicker> worst(int lamp) {
    Optional<DitherFlicker> worst = Optional.empty();
    for (Emitter emitter : lamps.get(lamp)) {
      if (emitter.worst.isPresent()
          && worst
              .filter(w -> !isWorse(emitter.worst.get().high(), emitter.worst.get().hertz(), w))
              .isEmpty()) {
        worst = emitter.worst;
      }
    }
    return worst;
  }

  private static boolean isWorse(int high, int hertz, DitherFlicker than) {
    return high != than.high() ? high < than.high() : hertz > than.hertz();
  }
}
