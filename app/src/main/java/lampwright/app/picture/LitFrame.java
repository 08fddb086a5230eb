package lampwright.app.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Scene;
import lampwright.exporters.picture.ScreenLight;

/** The brightest frame at the beginnings of a project's first scenes, for a small picture. */
public final class LitFrame {
  private static final int SCENES = 3;

  /** Enough to meet every lamp of the samples lit. */
  private static final int FRAMES = 400;

  private static final float MOST_EXPOSURE = 8;

  /** A pixel that glows less is as good as dark. */
  private static final float LEAST_LIT = 0.02f;

  /** One pixel of so many may stay dimmer than white. */
  private static final int DIM_SHARE = 4;

  private static final double BAR_SIZE = 0.8;

  private final Project project;
  private final FrameTable table;
  private final ScreenLight screen;
  private final byte[] bytes;

  private LitFrame(Project project, FrameTable table, ScreenLight screen, byte[] bytes) {
    this.project = project;
    this.table = table;
    this.screen = screen;
    this.bytes = bytes;
  }

  /** Renders it; empty if the project has no scene. */
  public static Optional<LitFrame> of(Project project) {
    return project.scenes().stream()
        .limit(SCENES)
        .map(scene -> of(project, scene))
        .max(Comparator.comparingLong(LitFrame::sum));
  }

  private long sum() {
    return sum(bytes);
  }

  private static long sum(byte[] bytes) {
    long sum = 0;
    for (byte b : bytes) {
      sum += b & 0xFF;
    }
    return sum;
  }

  /** The brightest frame at the beginning of a scene. */
  public static LitFrame of(Project project, Scene scene) {
    FrameTable table = FrameTable.of(project.rig(), scene);
    byte[] bytes = new byte[table.layout().bytes()];
    byte[] best = bytes.clone();
    long most = -1;
    FrameCursor cursor = table.cursor();
    for (int k = 0; k < FRAMES && cursor.hasNext(); k++) {
      cursor.next(bytes);
      long sum = sum(bytes);
      if (sum > most) {
        most = sum;
        best = bytes.clone();
      }
    }
    return new LitFrame(project, table, ScreenLight.of(table.layout()), best);
  }

  public Project project() {
    return project;
  }

  /** The scene's frames. */
  public FrameTable table() {
    return table;
  }

  public ScreenLight screen() {
    return screen;
  }

  /** A copy of its bytes. */
  public byte[] bytes() {
    return bytes.clone();
  }

  /** By which its light is multiplied, so that most of its lit pixels are as bright as white. */
  public float exposure() {
    Dots.Frame any = new Dots.Frame(0, 0, 1, 1);
    List<Float> lit = new ArrayList<>();
    for (View view : View.values()) {
      for (Dots.Dot dot : dots(view, any)) {
        float[] rgb = new float[3];
        screen.addPixel(bytes, dot.lamp(), dot.pixel(), rgb, 0);
        float most = Math.max(rgb[0], Math.max(rgb[1], rgb[2]));
        if (most > LEAST_LIT) {
          lit.add(most);
        }
      }
    }
    if (lit.isEmpty()) {
      return 1;
    }
    lit.sort(null);
    return Math.max(1, Math.min(MOST_EXPOSURE, 1 / lit.get(lit.size() / DIM_SHARE)));
  }

  /** Where its pixels are on the drawing of a side. */
  public List<Dots.Dot> dots(View view, Dots.Frame frame) {
    return Dots.of(lamps(), screen::pixels, view, frame);
  }

  /** Whether any lamp has a place on a drawing. */
  public boolean hasPlaces() {
    return screen.lamps().stream().anyMatch(lamp -> lamp.place().isPresent());
  }

  /** Its lamps with their places; a bench without a model has them as bars, one below another. */
  public List<Lamp> lamps() {
    List<Lamp> lamps = screen.lamps();
    if (hasPlaces()) {
      return lamps;
    }
    return IntStream.range(0, lamps.size())
        .mapToObj(
            k -> {
              double y = (k + 1.0) / (lamps.size() + 1);
              Place bar = new Place(View.SIDE, 0.5, y, BAR_SIZE);
              return Lamp.PLACE.with(lamps.get(k), Optional.of(bar));
            })
        .toList();
  }
}
