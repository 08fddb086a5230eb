package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.MatchedMixer;
import lampwright.engine.render.Column;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;

/**
 * The light that a pixel or output emits for the bytes of a frame: CIE XYZ, with Y in millicandela
 * on the axis.
 *
 * <p>Pixels shine as the emitters of their type do. For plain LEDs a project states no intensity;
 * they count with {@link #OUTPUT_MILLICANDELA_PER_MILLIAMP} and LED (common practice: a clear 5 mm
 * LED gives about a candela at 20 mA), in the colour that their output is drawn in.
 */
final class LampLight {
  static final double OUTPUT_MILLICANDELA_PER_MILLIAMP = 50;

  private static final double FULL = 255;

  private final int[] columns;
  // X, Y and Z of each column at full duty.
  private final double[] full;

  private LampLight(List<Integer> columns, List<double[]> full) {
    this.columns = columns.stream().mapToInt(Integer::intValue).toArray();
    this.full = full.stream().flatMapToDouble(java.util.Arrays::stream).toArray();
  }

  /** The light of each pixel of a lamp alone, in the lamp's order; of its output if it has one. */
  static List<LampLight> pixelsOf(Lamp lamp, FrameLayout layout) {
    Map<OptionalInt, List<Integer>> owned = new LinkedHashMap<>();
    List<Column> columns = layout.columns();
    for (int i = 0; i < columns.size(); i++) {
      int column = i;
      columns
          .get(i)
          .lamp()
          .filter(l -> l.lamp().equals(lamp.id()))
          .ifPresent(l -> owned.computeIfAbsent(l.pixel(), p -> new ArrayList<>()).add(column));
    }
    return owned.entrySet().stream()
        .sorted(Comparator.comparing(pixel -> pixel.getKey().orElse(0)))
        .map(Map.Entry::getValue)
        .map(
            some ->
                new LampLight(
                    some,
                    some.stream().map(i -> atFullDuty(columns.get(i).source(), layout)).toList()))
        .toList();
  }

  /** Adds the XYZ of a frame to {@code into[at .. at + 2]}. */
  void add(byte[] frame, double[] into, int at) {
    for (int i = 0; i < columns.length; i++) {
      double drive = (frame[columns[i]] & 0xFF) / FULL;
      into[at] += drive * full[3 * i];
      into[at + 1] += drive * full[3 * i + 1];
      into[at + 2] += drive * full[3 * i + 2];
    }
  }

  private static double[] atFullDuty(Column.Source source, FrameLayout layout) {
    if (source instanceof Column.PixelEmitter pixel) {
      for (Chain chain : layout.rig().chains()) {
        if (chain.id().equals(pixel.chain())) {
          Emitter emitter = chain.emitters().get(pixel.emitter());
          return emitter.chromaticity().xyz(emitter.millicandela());
        }
      }
    } else if (source instanceof Column.OutputDuty duty) {
      for (DriverOutput output : layout.rig().outputs()) {
        if (output.id().equals(duty.output())) {
          double millicandela =
              OUTPUT_MILLICANDELA_PER_MILLIAMP * output.milliamps() * output.ledsInSeries();
          return chromaticity(output.colour()).xyz(millicandela);
        }
      }
    }
    throw new IllegalArgumentException("column: " + source + ": needs one of this layout");
  }

  /** The chromaticity of an sRGB colour; that of white for black. */
  static Chromaticity chromaticity(Colour.Srgb colour) {
    return MatchedMixer.target(colour).orElse(Chromaticity.D65);
  }
}
