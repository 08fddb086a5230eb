package lampwright.engine.second;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Caps, and from drives to bytes. */
final class Bytes {
  private static final int TRIES = 200;

  private final Rig rig;
  private final boolean dithered;
  private final double[] milliamps;

  Bytes(Rig rig, boolean dithered) {
    this.rig = rig;
    this.dithered = dithered;
    milliamps =
        rig.packages.stream()
            .flatMapToDouble(one -> Arrays.stream(one.slots()).mapToDouble(i -> one.milliamps()[i]))
            .toArray();
  }

  List<int[]> of(List<double[][]> frames) {
    List<double[]> drives = frames.stream().map(this::inOrder).toList();
    double scene = rig.currentCap.equals("scene") ? sceneFactor(drives) : 1;
    return table(drives, scene);
  }

  private double[] inOrder(double[][] frame) {
    double[] drives = new double[milliamps.length];
    int at = 0;
    for (int k = 0; k < frame.length; k++) {
      for (int slot : rig.packages.get(k).slots()) {
        drives[at++] = frame[k][slot];
      }
    }
    return drives;
  }

  private List<int[]> table(List<double[]> frames, double scene) {
    List<int[]> table = new ArrayList<>();
    double[] errors = new double[milliamps.length];
    for (double[] drives : frames) {
      double[] before = errors;
      double frame =
          rig.currentCap.equals("frame")
              ? factor(
                  f -> currentOf(bytes(drives, rig.brightnessCap * scene * f, before)),
                  currentOf(drives))
              : 1;
      double all = rig.brightnessCap * scene * frame;
      int[] bytes = bytes(drives, all, before);
      if (dithered) {
        errors = errors(drives, all, before, bytes);
      }
      table.add(bytes);
    }
    return table;
  }

  private double sceneFactor(List<double[]> frames) {
    double most = frames.stream().mapToDouble(this::currentOf).max().orElseThrow();
    return factor(
        f -> table(frames, f).stream().mapToDouble(this::currentOf).max().orElseThrow(), most);
  }

  private static int[] bytes(double[] drives, double all, double[] errors) {
    int[] bytes = new int[drives.length];
    for (int i = 0; i < drives.length; i++) {
      double wanted = 255 * (drives[i] * all) + errors[i];
      bytes[i] = (int) Math.min(255, Math.max(0, Math.floor(wanted + 0.5)));
    }
    return bytes;
  }

  private static double[] errors(double[] drives, double all, double[] before, int[] bytes) {
    double[] errors = new double[drives.length];
    for (int i = 0; i < drives.length; i++) {
      errors[i] = 255 * (drives[i] * all) + before[i] - bytes[i];
    }
    return errors;
  }

  private double currentOf(int[] bytes) {
    double sum = 0;
    for (int i = 0; i < bytes.length; i++) {
      sum = sum + milliamps[i] * bytes[i];
    }
    return rig.idle + sum / 255;
  }

  private double currentOf(double[] drives) {
    double sum = rig.idle;
    for (int i = 0; i < drives.length; i++) {
      sum = sum + milliamps[i] * drives[i] * rig.brightnessCap;
    }
    return sum;
  }

  private double factor(DoubleUnaryOperator draw, double ofDrives) {
    if (draw.applyAsDouble(1) <= rig.limit) {
      return 1;
    }
    double room = rig.limit - rig.idle;
    if (room <= 0) {
      return 0;
    }
    double f = Math.min(1, room / (ofDrives - rig.idle));
    for (int i = 0; i < TRIES; i++) {
      double current = draw.applyAsDouble(f);
      if (current <= rig.limit) {
        return f;
      }
      f = f * Math.min(4095.0 / 4096, room / (current - rig.idle));
    }
    return 0;
  }
}
