package lampwright.app.workshop.model.drawing;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwright.app.workshop.model.ScreenLight;
import lampwright.app.workshop.model.Srgb8;

/**
 * Adds the light of lamps to a background, in linear light, and gives the screen's colours. Only
 * what changes is computed anew, in tiles.
 */
public final class Glow {
  private static final int TILE = 32;
  // Our own choice: most of the light is in the dot, some in a soft halo three times as wide.
  private static final double HALO_REACH = 3;
  private static final float HALO = 0.22f;
  // Less is not to be seen.
  private static final float LEAST_LIGHT = 0.0002f;

  private final int width;
  private final int height;
  private final int tilesWide;
  private final float[] background;
  private final float[] light;
  private final int[] argb;
  private final boolean[] dirty;
  private final boolean[] lit;
  private final Map<Integer, float[]> kernels = new HashMap<>();
  private boolean fresh = true;

  /**
   * A background of {@code width} x {@code height} pixels.
   *
   * @param backgroundArgb opaque sRGB colours, row by row
   */
  public Glow(int width, int height, int[] backgroundArgb) {
    this.width = width;
    this.height = height;
    this.tilesWide = (width + TILE - 1) / TILE;
    int tiles = tilesWide * ((height + TILE - 1) / TILE);
    this.dirty = new boolean[tiles];
    this.lit = new boolean[tiles];
    this.background = new float[3 * width * height];
    for (int i = 0; i < width * height; i++) {
      background[3 * i] = Srgb8.linear(backgroundArgb[i] >> 16 & 0xFF);
      background[3 * i + 1] = Srgb8.linear(backgroundArgb[i] >> 8 & 0xFF);
      background[3 * i + 2] = Srgb8.linear(backgroundArgb[i] & 0xFF);
    }
    this.light = new float[background.length];
    this.argb = new int[width * height];
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** The screen's colours after the last {@link #paint}; the same array each time. */
  public int[] argb() {
    return argb;
  }

  /**
   * Paints a frame.
   *
   * @param frame its bytes
   * @param exposure by which all light is multiplied
   * @param most nothing adds more light than this to any point of the screen; 1 is the screen's
   *     white
   */
  public void paint(
      ScreenLight screen, byte[] frame, List<Dots.Dot> dots, float exposure, float most) {
    System.arraycopy(lit, 0, dirty, 0, lit.length);
    Arrays.fill(lit, false);
    if (fresh) {
      Arrays.fill(dirty, true);
      fresh = false;
    }
    float[] rgb = new float[3 * dots.size()];
    for (int i = 0; i < dots.size(); i++) {
      Dots.Dot dot = dots.get(i);
      screen.addPixel(frame, dot.lamp(), dot.pixel(), rgb, 3 * i);
      limit(rgb, 3 * i, exposure, most);
      boolean shines = rgb[3 * i] + rgb[3 * i + 1] + rgb[3 * i + 2] > LEAST_LIGHT;
      if (shines) {
        mark(dot);
      }
    }
    restore();
    for (int i = 0; i < dots.size(); i++) {
      if (rgb[3 * i] + rgb[3 * i + 1] + rgb[3 * i + 2] > LEAST_LIGHT) {
        add(dots.get(i), rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2]);
      }
    }
    encode(most);
  }

  private void mark(Dots.Dot dot) {
    int reach = reach(dot.radius());
    int x0 = Math.max(0, (int) dot.x() - reach) / TILE;
    int y0 = Math.max(0, (int) dot.y() - reach) / TILE;
    int x1 = Math.min(width - 1, (int) dot.x() + reach) / TILE;
    int y1 = Math.min(height - 1, (int) dot.y() + reach) / TILE;
    for (int y = y0; y <= y1; y++) {
      for (int x = x0; x <= x1; x++) {
        dirty[y * tilesWide + x] = true;
        lit[y * tilesWide + x] = true;
      }
    }
  }

  private void restore() {
    for (int tile = 0; tile < dirty.length; tile++) {
      if (dirty[tile]) {
        int x0 = tile % tilesWide * TILE;
        int y0 = tile / tilesWide * TILE;
        int count = 3 * (Math.min(width, x0 + TILE) - x0);
        for (int y = y0; y < Math.min(height, y0 + TILE); y++) {
          int at = 3 * (y * width + x0);
          System.arraycopy(background, at, light, at, count);
        }
      }
    }
  }

  private void add(Dots.Dot dot, float r, float g, float b) {
    int reach = reach(dot.radius());
    float[] kernel = kernels.computeIfAbsent(key(dot.radius()), k -> kernel(dot.radius()));
    int side = 2 * reach + 1;
    int left = (int) Math.round(dot.x()) - reach;
    int top = (int) Math.round(dot.y()) - reach;
    int y0 = Math.max(0, -top);
    int y1 = Math.min(side, height - top);
    int x0 = Math.max(0, -left);
    int x1 = Math.min(side, width - left);
    for (int y = y0; y < y1; y++) {
      int from = y * side + x0;
      int to = 3 * ((top + y) * width + left + x0);
      for (int x = x0; x < x1; x++) {
        float share = kernel[from++];
        light[to++] += share * r;
        light[to++] += share * g;
        light[to++] += share * b;
      }
    }
  }

  private void encode(float most) {
    for (int tile = 0; tile < dirty.length; tile++) {
      if (dirty[tile]) {
        int x0 = tile % tilesWide * TILE;
        int y0 = tile / tilesWide * TILE;
        int x1 = Math.min(width, x0 + TILE);
        for (int y = y0; y < Math.min(height, y0 + TILE); y++) {
          for (int at = y * width + x0; at < y * width + x1; at++) {
            hold(3 * at, most);
            argb[at] = Srgb8.argb(light[3 * at], light[3 * at + 1], light[3 * at + 2]);
          }
        }
      }
    }
  }

  // Where lamps stand close their light adds up.
  private void hold(int at, float most) {
    float added = 0;
    for (int c = at; c < at + 3; c++) {
      added = Math.max(added, light[c] - background[c]);
    }
    if (added > most) {
      for (int c = at; c < at + 3; c++) {
        light[c] = background[c] + (light[c] - background[c]) * (most / added);
      }
    }
  }

  /** The light of a dot as it is painted: exposed, no component below 0 and none above the most. */
  static void limit(float[] rgb, int at, float exposure, float most) {
    float brightest = 0;
    for (int c = at; c < at + 3; c++) {
      rgb[c] = Math.max(0, rgb[c] * exposure);
      brightest = Math.max(brightest, rgb[c]);
    }
    if (brightest > most) {
      for (int c = at; c < at + 3; c++) {
        rgb[c] *= most / brightest;
      }
    }
  }

  /** Copies the unlit colour of a point of the screen, linear, to {@code into[0 .. 2]}. */
  void ground(int x, int y, float[] into) {
    System.arraycopy(background, 3 * (y * width + x), into, 0, 3);
  }

  /** How much of a dot's light comes to a point of the screen, 0 to 1. */
  static float share(Dots.Dot dot, int x, int y) {
    return share(
        key(dot.radius()) / 4.0,
        Math.hypot(x - (int) Math.round(dot.x()), y - (int) Math.round(dot.y())));
  }

  private static float share(double radius, double distance) {
    double core = Math.max(0, Math.min(1, radius - distance + 0.5));
    double far = Math.max(0, 1 - distance / (HALO_REACH * radius));
    return (float) Math.min(1, core + HALO * far * far);
  }

  private static int reach(double radius) {
    return (int) Math.ceil(key(radius) / 4.0 * HALO_REACH);
  }

  // Radii in quarters of a pixel, so that few kernels serve all dots.
  private static int key(double radius) {
    return (int) Math.round(radius * 4);
  }

  private static float[] kernel(double wanted) {
    double radius = key(wanted) / 4.0;
    int reach = reach(wanted);
    int side = 2 * reach + 1;
    float[] kernel = new float[side * side];
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        kernel[y * side + x] = share(radius, Math.hypot(x - reach, y - reach));
      }
    }
    return kernel;
  }
}
