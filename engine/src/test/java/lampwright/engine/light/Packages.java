package lampwright.engine.light;

import java.util.EnumMap;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Packages that the tests of this folder share. */
final class Packages {
  private Packages() {}

  static Emitter emitter(double x, double y, double millicandela) {
    return new Emitter(new Chromaticity(x, y), millicandela);
  }

  static Map<EmitterKind, Emitter> rgb(Emitter r, Emitter g, Emitter b) {
    Map<EmitterKind, Emitter> emitters = new EnumMap<>(EmitterKind.class);
    emitters.put(EmitterKind.RED, r);
    emitters.put(EmitterKind.GREEN, g);
    emitters.put(EmitterKind.BLUE, b);
    return emitters;
  }

  static Map<EmitterKind, Emitter> rgbw(Emitter r, Emitter g, Emitter b, Emitter w) {
    Map<EmitterKind, Emitter> emitters = rgb(r, g, b);
    emitters.put(EmitterKind.WHITE, w);
    return emitters;
  }

  /** The package for which the greatest-luminance mixes are tabled. */
  static Map<EmitterKind, Emitter> bench() {
    return rgbw(
        emitter(0.700, 0.299, 405),
        emitter(0.170, 0.700, 690),
        emitter(0.136, 0.050, 190),
        emitter(0.3451, 0.3516, 2000));
  }

  /** The emitters with a current of 20 mA each at full drive. */
  static Map<EmitterKind, FittedEmitter> fitted(Map<EmitterKind, Emitter> emitters) {
    Map<EmitterKind, FittedEmitter> fitted = new EnumMap<>(EmitterKind.class);
    emitters.forEach((kind, emitter) -> fitted.put(kind, new FittedEmitter(emitter, 20)));
    return fitted;
  }

  /** Packages whose emitters lie anywhere, with red, green and blue a fair way apart. */
  static Arbitrary<Map<EmitterKind, Emitter>> any() {
    Arbitrary<Emitter> emitter = anyEmitter();
    return Combinators.combine(emitter, emitter, emitter, emitter.injectNull(0.25))
        .as((r, g, b, w) -> w == null ? rgb(r, g, b) : rgbw(r, g, b, w))
        .filter(p -> span(p) > 0.01);
  }

  private static Arbitrary<Emitter> anyEmitter() {
    Arbitrary<Double> coordinate = Arbitraries.doubles().between(0.01, 0.85).ofScale(6);
    Arbitrary<Double> light = Arbitraries.doubles().between(1, 5000).ofScale(2);
    return Combinators.combine(coordinate, coordinate, light)
        .filter((x, y, i) -> x + y < 1)
        .as(Packages::emitter);
  }

  private static double span(Map<EmitterKind, Emitter> p) {
    Chromaticity r = p.get(EmitterKind.RED).chromaticity();
    Chromaticity g = p.get(EmitterKind.GREEN).chromaticity();
    Chromaticity b = p.get(EmitterKind.BLUE).chromaticity();
    return Math.abs((g.x() - r.x()) * (b.y() - r.y()) - (b.x() - r.x()) * (g.y() - r.y()));
  }
}
