package lampwright.engine.rig;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;

/** The numbers of the built-in pixel types. */
final class PixelTypeTable {
  private static final FittedEmitter RED = emitter(0.7006, 0.2993, 405);
  private static final FittedEmitter GREEN = emitter(0.1164, 0.7550, 690);
  private static final FittedEmitter BLUE = emitter(0.1353, 0.0456, 190);
  private static final FittedEmitter WHITE = emitter(0.3608, 0.3636, 2000);

  private static final LineTiming SK6812 = new LineTiming(300, 900, 600, 600, 150, 80);

  static final List<PixelType> TYPES =
      ImmutableList.of(
          rgb("ws2812b", new LineTiming(400, 850, 800, 450, 150, 300)),
          rgb("sk6812-rgb", SK6812),
          new PixelType(
              "sk6812-rgbw",
              EmitterOrder.parse("GRBW").orElseThrow(),
              1,
              5,
              ImmutableMap.of(
                  EmitterKind.RED,
                  RED,
                  EmitterKind.GREEN,
                  GREEN,
                  EmitterKind.BLUE,
                  BLUE,
                  EmitterKind.WHITE,
                  WHITE),
              SK6812));

  private PixelTypeTable() {}

  private static PixelType rgb(String id, LineTiming line) {
    return new PixelType(
        id,
        EmitterOrder.parse("GRB").orElseThrow(),
        1,
        5,
        ImmutableMap.of(EmitterKind.RED, RED, EmitterKind.GREEN, GREEN, EmitterKind.BLUE, BLUE),
        line);
  }

  private static FittedEmitter emitter(double x, double y, double millicandela) {
    return new FittedEmitter(new Emitter(new Chromaticity(x, y), millicandela), 20);
  }
}
