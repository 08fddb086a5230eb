package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.MatchedMixer;
import lampwright.engine.render.Column;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;

/**
 * The light that a pixel or output emits for the bytes of a frame: CIE XYZ, with Y in millicandela
 * on the axis.
 *
 * <p>Pixels shine as the emitters of their type do. For plain LEDs a project states no intensity;
 * they count with {@link #OUTPUT_MILLICANDELA_PER_MILLIAMP} and LED, in the colour that their
 * output is drawn in.
 */
public final class LampLight {
  public static final double OUTPUT_MILLICANDELA_PER_MILLIAMP =
      TradeNumbers.number("plain LED", "light");

  private static final double FULL = 255;

  private final int[] columns;
  // X, Y and Z of each column at full duty.
  private final double[] full;
  // The same for a step of duty.
  private final double[] step;

  private LampLight(List<Integer> columns, List<double[]> full) {
    this.columns = columns.stream().mapToInt(Integer::intValue).toArray();
    this.full = full.stream().flatMapToDouble(Arrays::stream).toArray();
    this.step = Arrays.stream(this.full).map(light -> light / FULL).toArray();
  }

  /**
   * The light of each pixel of each lamp alone, by the lamp's id: in the lamp's order; of its
   * output if it has one.
   */
  public static Map<String, List<LampLight>> ofLamps(FrameLayout layout) {
    Map<String, Map<Integer, List<Integer>>> owned = new LinkedHashMap<>();
    List<Column> columns = layout.columns();
    for (int i = 0; i < columns.size(); i++) {
      int column = i;
      columns
          .get(i)
          .lamp()
          .ifPresent(
              l ->
                  owned
                      .computeIfAbsent(l.lamp(), lamp -> new TreeMap<>())
                      .computeIfAbsent(l.pixel().orElse(0), pixel -> new ArrayList<>())
                      .add(column));
    }
    Map<String, List<LampLight>> lights = new LinkedHashMap<>();
    owned.forEach(
        (lamp, pixels) ->
            lights.put(
                lamp, pixels.values().stream().map(own -> of(own, columns, layout)).toList()));
    return lights;
  }

  private static LampLight of(List<Integer> own, List<Column> columns, FrameLayout layout) {
    return new LampLight(
        own, own.stream().map(i -> atFullDuty(columns.get(i).source(), layout)).toList());
  }

  /** X, Y and Z of everything at full duty. */
  public double[] fullXyz() {
    double[] sum = new double[3];
    for (int i = 0; i < full.length; i++) {
      sum[i % 3] += full[i];
    }
    return sum;
  }

  /** X, Y and Z at full duty of each of its {@link #columns}, three numbers each. */
  public double[] columnsXyz() {
    return full.clone();
  }

  /** The bytes of a frame that it shines by. */
  public int[] columns() {
    return columns.clone();
  }

  /** Whether it shines otherwise in one frame than in another. */
  boolean differs(byte[] one, byte[] other) {
    for (int column : columns) {
      if (one[column] != other[column]) {
        return true;
      }
    }
    return false;
  }

  /**
   * The greatest duty of its emitters in a frame, 0 to 255. It is 0 where all is dark, whatever the
   * colour, and for one colour it goes as the light does.
   */
  int mostDuty(byte[] frame) {
    int most = 0;
    for (int column : columns) {
      most = Math.max(most, frame[column] & 0xFF);
    }
    return most;
  }

  /** Adds the XYZ of a frame to {@code into[at .. at + 2]}. */
  public void add(byte[] frame, double[] into, int at) {
    for (int i = 0; i < columns.length; i++) {
      int duty = frame[columns[i]] & 0xFF;
      into[at] += duty * step[3 * i];
      into[at + 1] += duty * step[3 * i + 1];
      into[at + 2] += duty * step[3 * i + 2];
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
    throw new IllegalArgumentException("column: " + source + ": must be one of this layout");
  }

  /** The chromaticity of an sRGB colour; that of white for black. */
  public static Chromaticity chromaticity(Colour.Srgb colour) {
    return MatchedMixer.target(colour).orElse(Chromaticity.D65);
  }
}
