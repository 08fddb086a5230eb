package lampwright.exporters.packed;

import java.util.ArrayList;
import java.util.List;
import lampwright.exporters.packed.encode.PackLayout;

/** A rig of the corpus under construction: where each emitter of each lamp stands in the frame. */
public final class Model {
  /** Frame offsets of red, green, blue and white of each pixel; -1 where the pixel has none. */
  public record LampEmitters(String id, List<int[]> pixels) {}

  // 1.25 us a bit and 300 us reset, which every pixel type of the corpus stands.
  private static final double BYTE_US = 10;
  private static final double RESET_US = 300;

  final List<LampEmitters> lamps = new ArrayList<>();
  public int frameBytes;
  int outputs;

  /** Adds a chain whose lamps have the given numbers of pixels, one after another. */
  public Model chain(boolean white, int... lampPixels) {
    int size = white ? 4 : 3;
    for (int count : lampPixels) {
      List<int[]> pixels = new ArrayList<>();
      for (int k = 0; k < count; k++) {
        int at = frameBytes;
        pixels.add(new int[] {at + 1, at, at + 2, white ? at + 3 : -1});
        frameBytes += size;
      }
      lamps.add(new LampEmitters("lamp-" + lamps.size(), pixels));
    }
    return this;
  }

  /** Adds driver outputs, each a lamp; call after the chains. */
  public Model outputs(int count) {
    for (int i = 0; i < count; i++) {
      lamps.add(new LampEmitters("lamp-" + lamps.size(), List.of(new int[] {frameBytes++})));
      outputs++;
    }
    return this;
  }

  public PackLayout layout() {
    List<PackLayout.LampColumns> columns = new ArrayList<>();
    for (LampEmitters lamp : lamps) {
      List<Integer> offsets = new ArrayList<>();
      for (int[] pixel : lamp.pixels()) {
        for (int at : pixel) {
          if (at >= 0) {
            offsets.add(at);
          }
        }
      }
      offsets.sort(null);
      columns.add(new PackLayout.LampColumns(lamp.id(), offsets));
    }
    int chained = frameBytes - outputs;
    double wireMicros = chained == 0 ? 0 : chained * BYTE_US + RESET_US;
    return new PackLayout(frameBytes, wireMicros, columns);
  }
}
