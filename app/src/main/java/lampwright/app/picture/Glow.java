package lampwright.app.picture;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwright.exporters.picture.ScreenLight;
import lampwright.exporters.picture.Srgb8;

/**
 * Adds the light of lamps up, in linear light, lays it over a background, and gives the screen's
 * colours. Only what changes is computed anew, in tiles.
 */
public final class Glow {
  /**
   * Lamps add no more light to any point of a dimmed preview than this share of the screen's white:
   * less than the tenth that makes a flash, and with saturated red less than the 20 of (R - G - B)
   * x 320 that makes a red one (W3C WCAG 2.2, general flash and red flash thresholds).
   */
  public static final float DIMMED_MOST = 0.06f;

  private static final int TILE = 32;
  // Our own choice: most of the light is in the dot, some in a soft halo three times as wide.
  private static final double HALO_REACH = 3;
  private static final float HALO = 0.22f;

  /** Of a lamp's light, that which is seen in its beam. Our own choice. */
  private static final float BEAM = 0.35f;

  // Less is not to be seen.
  private static final float LEAST_LIGHT = 0.0002f;

  private final int width;
  private final int height;
  private final int tilesWide;
  private final float[] background;
  private final float[] light;
  // What is painted where no light falls, which is most of a tile that a lamp reaches into.
  private final int[] unlit;
  private final int[] argb;
  private final boolean[] dirty;
  private final boolean[] lit;
  private final Map<Integer, float[]> kernels = new HashMap<>();
  private final Map<Dots.Beam, float[]> beams = new HashMap<>();
  private boolean fresh = true;
  private float brightest;

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
    this.unlit = new int[width * height];
    for (int i = 0; i < unlit.length; i++) {
      unlit[i] = over(background, 3 * i, 0, 0, 0);
    }
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
   * The greatest component of any dot in the last {@link #paint}, exposed but not held to the most:
   * 1 is the screen's white.
   */
  public float brightest() {
    return brightest;
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
    brightest = 0;
    for (int i = 0; i < dots.size(); i++) {
      Dots.Dot dot = dots.get(i);
      screen.addPixel(frame, dot.lamp(), dot.pixel(), rgb, 3 * i);
      brightest = Math.max(brightest, limit(rgb, 3 * i, exposure, most));
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
    int reach = Math.max(reach(dot.radius()), dot.beam().map(Glow::reach).orElse(0));
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
          Arrays.fill(light, at, at + count, 0);
        }
      }
    }
  }

  private void add(Dots.Dot dot, float r, float g, float b) {
    add(
        dot,
        reach(dot.radius()),
        kernels.computeIfAbsent(key(dot.radius()), k -> kernel(dot.radius())),
        r,
        g,
        b);
    dot.beam()
        .ifPresent(
            beam -> add(dot, reach(beam), beams.computeIfAbsent(beam, Glow::kernel), r, g, b));
  }

  private void add(Dots.Dot dot, int reach, float[] kernel, float r, float g, float b) {
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
            if (light[3 * at] == 0 && light[3 * at + 1] == 0 && light[3 * at + 2] == 0) {
              argb[at] = unlit[at];
              continue;
            }
            if (most < Float.MAX_VALUE) {
              // Where lamps stand close their light adds up.
              limit(light, 3 * at, 1, most);
            }
            argb[at] =
                over(background, 3 * at, light[3 * at], light[3 * at + 1], light[3 * at + 2]);
          }
        }
      }
    }
  }

  /**
   * Light over a ground, as the screen's colour. Light as bright as the screen's white, or
   * brighter, hides the ground and keeps its hue: a red lamp is red on paper too.
   *
   * @param ground linear red, green and blue from index {@code at}
   */
  static int over(float[] ground, int at, float r, float g, float b) {
    float most = Math.max(r, Math.max(g, b));
    float seen = Math.max(0, 1 - most);
    float scale = most > 1 ? 1 / most : 1;
    return Srgb8.argb(
        ground[at] * seen + r * scale,
        ground[at + 1] * seen + g * scale,
        ground[at + 2] * seen + b * scale);
  }

  /**
   * The light of a dot as it is painted: exposed, within sRGB and none above the most.
   *
   * @return its greatest component before it was held to the most
   */
  static float limit(float[] rgb, int at, float exposure, float most) {
    float brightest = 0;
    Srgb8.lift(rgb, at);
    for (int c = at; c < at + 3; c++) {
      rgb[c] *= exposure;
      brightest = Math.max(brightest, rgb[c]);
    }
    if (brightest > most) {
      for (int c = at; c < at + 3; c++) {
        rgb[c] *= most / brightest;
      }
    }
    return brightest;
  }

  /** Copies the unlit colour of a point of the screen, linear, to {@code into[0 .. 2]}. */
  void ground(int x, int y, float[] into) {
    System.arraycopy(background, 3 * (y * width + x), into, 0, 3);
  }

  /** How much of a dot's light comes to a point of the screen, 0 and more. */
  static float share(Dots.Dot dot, int x, int y) {
    int dx = x - (int) Math.round(dot.x());
    int dy = y - (int) Math.round(dot.y());
    return share(key(dot.radius()) / 4.0, Math.hypot(dx, dy))
        + dot.beam().map(beam -> share(beam, dx, dy)).orElse(0f);
  }

  private static int reach(Dots.Beam beam) {
    return (int) Math.ceil(beam.length());
  }

  /** How much of a beam's light is seen at a point, as seen from the lamp. */
  private static float share(Dots.Beam beam, double dx, double dy) {
    double far = Math.hypot(dx, dy) / beam.length();
    double off =
        Math.abs(
            Math.IEEEremainder(Math.toDegrees(Math.atan2(dy, dx)) - beam.turnDegrees(), 360.0));
    double aside = 2 * off / beam.spreadDegrees();
    if (far >= 1 || aside >= 1) {
      return 0;
    }
    // Soft at its edges, and fading as it goes.
    double edge = Math.min(1, 2 * (1 - aside));
    return (float) (BEAM * edge * (1 - far) * (1 - far));
  }

  private static float[] kernel(Dots.Beam beam) {
    int reach = reach(beam);
    int side = 2 * reach + 1;
    float[] kernel = new float[side * side];
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        kernel[y * side + x] = share(beam, x - reach, y - reach);
      }
    }
    return kernel;
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
