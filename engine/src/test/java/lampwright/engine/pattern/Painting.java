package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mixer;
import lampwright.engine.light.Mixers;
import lampwright.engine.time.Ratio;

/** Paints patterns on a row of driver outputs, whose one drive shows the light alone. */
final class Painting {
  static final Curve LINEAR = new Curve.Linear();

  private final Painter painter;
  private final double[] drives;

  Painting(Pattern pattern, int pixels, long lengthMs) {
    this(pattern, Collections.nCopies(pixels, Mixers.forOutput(LINEAR)), LINEAR, lengthMs);
  }

  Painting(Pattern pattern, List<Mixer> mixers, Curve curve, long lengthMs) {
    this.painter = pattern.painter(new PaintContext(mixers, curve, Ratio.of(lengthMs)));
    this.drives = new double[mixers.size() * Mixer.SLOTS];
  }

  /** Light of every pixel (its first emitter) at an instant. */
  List<Double> at(String tMs) {
    return at(Ratio.of(new BigDecimal(tMs)));
  }

  List<Double> at(Ratio tMs) {
    painter.paint(tMs, drives);
    List<Double> light = new ArrayList<>();
    for (int i = 0; i < drives.length; i += Mixer.SLOTS) {
      light.add(drives[i]);
    }
    return light;
  }

  /** All four drives of the first pixel at an instant. */
  List<Double> emittersAt(String tMs) {
    painter.paint(Ratio.of(new BigDecimal(tMs)), drives);
    return List.of(drives[0], drives[1], drives[2], drives[3]);
  }

  /** The first pixel as # and . every so many ms. */
  String strip(int everyMs, int count) {
    StringBuilder strip = new StringBuilder();
    for (int i = 0; i < count; i++) {
      strip.append(at(Ratio.of((long) i * everyMs)).get(0) > 0 ? '#' : '.');
    }
    return strip.toString();
  }
}
