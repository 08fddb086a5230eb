package lampwright.engine.second;

import java.util.List;

/**
 * A pixel type.
 *
 * @param order letters of the bytes on the line
 * @param emitters red, green, blue and, if it has one, white
 */
record PixelKind(String order, double idleMilliamps, List<Emitter> emitters) {
  PixelKind {
    emitters = List.copyOf(emitters);
  }

  PixelKind withOrder(String letters) {
    return new PixelKind(letters, idleMilliamps, emitters);
  }

  PixelKind withWhite(Chromaticity white) {
    Emitter old = emitters.get(3);
    return new PixelKind(
        order,
        idleMilliamps,
        List.of(
            emitters.get(0),
            emitters.get(1),
            emitters.get(2),
            new Emitter(white, old.mcd(), old.milliamps())));
  }
}
