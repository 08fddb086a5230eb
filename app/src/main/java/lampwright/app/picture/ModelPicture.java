package lampwright.app.picture;

import java.awt.AlphaComposite;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lampwright.app.outline.Models;
import lampwright.app.outline.Outline;
import lampwright.engine.document.ModelKind;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FrameGauge;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.DisplayList;

/**
 * One side of a project's model, on which the light of frames is painted. Not safe for use by
 * several threads.
 */
public final class ModelPicture {
  /** The width of every picture, pixels. */
  public static final int WIDTH = 720;

  /** No picture is higher, pixels. */
  private static final int MOST_HEIGHT = 720;

  private static final double MARGIN = 24;

  /** A model has no words on it. */
  private static final Font NO_TYPE = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

  /** By night a photograph is seen as by moonlight. */
  private static final float PHOTOGRAPH_BY_NIGHT = 0.25f;

  private final LitFrame lit;
  private final Glow glow;
  private final List<Dots.Dot> dots;
  private final float exposure;

  private ModelPicture(LitFrame lit, Glow glow, List<Dots.Dot> dots) {
    this.lit = lit;
    this.glow = glow;
    this.dots = dots;
    this.exposure = lit.exposure();
  }

  /**
   * The picture of a side, still unlit.
   *
   * @param lit the brightest frame of the scene, by which it is exposed
   * @param view the side
   * @param photograph what is there in place of the drawing
   */
  public static ModelPicture of(
      LitFrame lit, View view, Optional<BufferedImage> photograph, boolean night) {
    Outline outline = ModelDrawing.of(lit.project(), view);
    double aspect =
        photograph
            .map(image -> image.getWidth() / (double) image.getHeight())
            .orElse(outline.width() / outline.height());
    int height =
        (int)
            Math.min(
                MOST_HEIGHT, Math.max(1, Math.round((WIDTH - 2 * MARGIN) / aspect + 2 * MARGIN)));
    Dots.Frame frame = Dots.Frame.within(WIDTH, height, aspect, MARGIN);
    DrawingPalette palette = night ? DrawingPalette.night() : DrawingPalette.day();
    DisplayList.Builder list = new DisplayList.Builder(WIDTH, height);
    list.fillRect(0, 0, WIDTH, height, DrawingInk.WASH);
    // A bench without a model has its lamps alone.
    if (photograph.isEmpty() && (lit.project().model().isPresent() || lit.hasPlaces())) {
      ModelDrawing.add(list, outline, frame);
    }
    BufferedImage ground = RasterPainter.paint(list.build(), palette, NO_TYPE, 1);
    photograph.ifPresent(image -> lay(image, frame, night, ground));
    int[] argb = ground.getRGB(0, 0, WIDTH, height, new int[WIDTH * height], 0, WIDTH);
    List<Dots.Dot> dots = lit.dots(view, frame);
    Color film = palette.colour(DrawingInk.FILM);
    dots.forEach(dot -> Lenses.disc(argb, WIDTH, height, dot, film.getRGB() & 0xFFFFFF));
    return new ModelPicture(lit, new Glow(WIDTH, height, argb), dots);
  }

  /** The side of a project that shows most of its lamps, and among equals most of the model. */
  public static View fullest(LitFrame lit) {
    ModelKind kind = lit.project().model().orElse(ModelDrawing.USUAL);
    View main = Models.mainView(kind);
    View fullest = Sides.fullest(lit.lamps());
    return Sides.count(lit.lamps(), main) == Sides.count(lit.lamps(), fullest) ? main : fullest;
  }

  private static void lay(
      BufferedImage image, Dots.Frame frame, boolean night, BufferedImage onto) {
    Graphics2D g = onto.createGraphics();
    try {
      g.setRenderingHint(
          RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
      if (night) {
        g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, PHOTOGRAPH_BY_NIGHT));
      }
      g.drawImage(
          image,
          (int) Math.round(frame.x()),
          (int) Math.round(frame.y()),
          (int) Math.round(frame.width()),
          (int) Math.round(frame.height()),
          null);
    } finally {
      g.dispose();
    }
  }

  public int width() {
    return glow.width();
  }

  public int height() {
    return glow.height();
  }

  /** Where the pixels of the lamps are in it. */
  public List<Dots.Dot> dots() {
    return dots;
  }

  /**
   * Paints a frame.
   *
   * @param most nothing adds more light than this to any point; 1 is the screen's white
   * @return opaque sRGB colours, row by row; the same array each time
   */
  public int[] paint(byte[] frame, float most) {
    glow.paint(lit.screen(), frame, dots, exposure, most);
    return glow.argb();
  }

  /** The brightest frame, at full light. */
  public BufferedImage still() {
    BufferedImage image = new BufferedImage(width(), height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, width(), height(), paint(lit.bytes(), Float.MAX_VALUE), 0, width());
    return image;
  }

  /**
   * The flashes of what is painted at full light, judged as a loop.
   *
   * @param frames gives the frames that are shown, in order, to what it is given
   * @param count of them
   */
  public FlashCaution flashes(FrameTable table, int count, Consumer<FrameGauge> frames) {
    return new PaintedFlashes(lit.screen(), glow, dots, exposure, table.framesPerSecond(), count)
        .ofLoop(frames);
  }
}
