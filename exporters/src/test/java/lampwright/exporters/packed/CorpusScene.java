package lampwright.exporters.packed;

import java.util.ArrayList;
import java.util.List;

/** Renders a scene of the corpus: cues over each other, warm-up, rounding, dither. */
public final class CorpusScene {
  private record Cue(int lamp, int startMs, int endMs, int fadeMs, Patterns.Pattern pattern) {}

  private record Feel(int lamp, double riseMs, double fallMs) {}

  private final Model model;
  private final int fps;
  private final int frames;
  private final boolean loop;
  private final boolean dither;
  private final List<Cue> cues = new ArrayList<>();
  private final List<Feel> feels = new ArrayList<>();

  public CorpusScene(Model model, int fps, int frames, boolean loop, boolean dither) {
    this.model = model;
    this.fps = fps;
    this.frames = frames;
    this.loop = loop;
    this.dither = dither;
  }

  public CorpusScene cue(int lamp, Patterns.Pattern pattern) {
    return cue(lamp, 0, Integer.MAX_VALUE, 0, pattern);
  }

  public CorpusScene cue(int lamp, int startMs, int endMs, int fadeMs, Patterns.Pattern pattern) {
    cues.add(new Cue(lamp, startMs, endMs, fadeMs, pattern));
    return this;
  }

  public CorpusScene feel(int lamp, double riseMs, double fallMs) {
    feels.add(new Feel(lamp, riseMs, fallMs));
    return this;
  }

  /** The frame table, frame by frame. */
  public byte[] render() {
    double[] y = new double[model.frameBytes];
    double[] error = new double[model.frameBytes];
    byte[] table = new byte[Math.multiplyExact(frames, model.frameBytes)];
    for (int run = loop && !feels.isEmpty() ? 0 : 1; run < 2; run++) {
      for (int i = 0; i < frames; i++) {
        double[] x = drives(i);
        for (Feel feel : feels) {
          for (int[] pixel : model.lamps.get(feel.lamp()).pixels()) {
            for (int at : pixel) {
              if (at >= 0) {
                double tau = (x[at] > y[at] ? feel.riseMs() : feel.fallMs()) / StrictMath.log(10);
                y[at] += (x[at] - y[at]) * (1 - StrictMath.exp(-1000.0 / fps / tau));
                x[at] = y[at];
              }
            }
          }
        }
        for (int at = 0; at < x.length; at++) {
          double exact = 255 * x[at] + (dither ? error[at] : 0);
          int value = (int) Math.max(0, Math.min(255, Math.floor(exact + 0.5)));
          error[at] = exact - value;
          table[i * model.frameBytes + at] = (byte) value;
        }
      }
    }
    return table;
  }

  private double[] drives(int frame) {
    double[] x = new double[model.frameBytes];
    double[] d = new double[4];
    for (Cue cue : cues) {
      long num = frame * 1000L - (long) cue.startMs() * fps;
      double at = (double) num / fps;
      if (num < 0 || at + cue.startMs() >= cue.endMs()) {
        continue;
      }
      double left = cue.endMs() - cue.startMs() - at;
      double share =
          cue.fadeMs() == 0 ? 1 : Math.min(1, Math.min(at / cue.fadeMs(), left / cue.fadeMs()));
      double over = Patterns.curve(share);
      List<int[]> pixels = model.lamps.get(cue.lamp()).pixels();
      for (int k = 0; k < pixels.size(); k++) {
        cue.pattern().at(new Patterns.Time(num, fps), k, pixels.size(), d);
        int[] pixel = pixels.get(k);
        for (int e = 0; e < pixel.length; e++) {
          if (pixel[e] >= 0) {
            double light = pixel.length == 1 ? Math.max(Math.max(d[0], d[1]), d[2]) : d[e];
            x[pixel[e]] = x[pixel[e]] * (1 - over) + light * over;
          }
        }
      }
    }
    return x;
  }
}
