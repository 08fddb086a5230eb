package lampwright.engine.render;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import com.google.common.collect.MapMaker;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentMap;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import org.jspecify.annotations.Nullable;

/**
 * All frames of a scene, in order, rendered when they are asked for. Immutable and safe for use by
 * several threads; each {@link FrameCursor} belongs to one. Rendering on a thread that is
 * interrupted ends with a {@link java.util.concurrent.CancellationException}, before its next
 * frame.
 */
public final class FrameTable {
  private static final long MAX_KEPT_BYTES = 32L << 20;

  // A smaller one takes less time than a second renderer and a second thread.
  private static final long LEAST_BYTES_FOR_TWO = 1L << 18;

  // Scenes are told apart as objects: one that is edited is another one.
  private static final ConcurrentMap<Scene, FrameTable> IN_USE =
      new MapMaker().weakKeys().weakValues().makeMap();

  private final FrameLayout layout;
  private final Scene scene;
  private final Supplier<Double> sceneFactor;
  private volatile @Nullable KeptFrames kept;

  private FrameTable(FrameLayout layout, Scene scene) {
    this.layout = layout;
    this.scene = scene;
    this.sceneFactor = Suppliers.memoize(this::findSceneFactor);
  }

  /**
   * The frame table of a scene: the same one as long as somebody uses it.
   *
   * @param scene whose tracks name lamps of the rig
   * @throws IllegalArgumentException if a track names a lamp that the rig has not
   */
  // A rig that is another is seldom equal, and finding that out takes as long as a new table.
  @SuppressWarnings("ReferenceEquality")
  public static FrameTable of(Rig rig, Scene scene) {
    for (var track : scene.tracks()) {
      for (String lamp : track.lamps()) {
        if (rig.lamp(lamp).isEmpty()) {
          throw new IllegalArgumentException("lamp: " + lamp + ": must be a lamp of the rig");
        }
      }
    }
    FrameTable known = IN_USE.get(scene);
    if (known != null && known.layout.rig() == rig) {
      return known;
    }
    FrameTable table = new FrameTable(new FrameLayout(rig), scene);
    IN_USE.put(scene, table);
    return table;
  }

  /** The layout of the bytes of a frame. */
  public FrameLayout layout() {
    return layout;
  }

  public Scene scene() {
    return scene;
  }

  /** 1 to 1,000,000. */
  public int frameCount() {
    return scene.frameCount();
  }

  /** Frames per second. */
  public double framesPerSecond() {
    return scene.framesPerSecond().doubleValue();
  }

  /** Whether the first frame follows the last. */
  public boolean loops() {
    return scene.loop();
  }

  /** Whether rounding errors are carried from frame to frame. */
  public boolean isDithered() {
    return scene.dither() == Dither.TEMPORAL;
  }

  /** The same scene without dithering: the light that is meant, each frame rounded by itself. */
  public FrameTable withoutDither() {
    return isDithered() ? new FrameTable(layout, Scene.DITHER.with(scene, Dither.OFF)) : this;
  }

  /** Frames x bytes per frame. */
  public long bytes() {
    return (long) frameCount() * layout.bytes();
  }

  /**
   * Whether any frame can be rendered at once, without others: no feel, no dither, no cap over the
   * whole scene.
   */
  public boolean seeksAtOnce() {
    boolean felt = layout.rig().lamps().stream().anyMatch(lamp -> lamp.feel().isPresent());
    return !felt && scene.dither() == Dither.OFF && layout.rig().currentCap() != CurrentCap.SCENE;
  }

  /**
   * Opens the table at its first frame. The frames of a table that is not too large are kept once a
   * cursor has gone through them all, for as long as the table is, so that all who ask for them
   * share one rendering; a larger one is rendered on two threads where frames do not rest on the
   * past.
   */
  public FrameCursor cursor() {
    // To find it may take all frames, which are then at hand.
    double factor = sceneFactor.get();
    KeptFrames found = kept;
    if (found != null) {
      return cursor(found.source(), Optional.empty());
    }
    return cursor(source(factor), room());
  }

  /** Room for the frames; none if they are too large to be kept. */
  private Optional<KeptFrames> room() {
    boolean keep = bytes() <= Math.min(MAX_KEPT_BYTES, Runtime.getRuntime().maxMemory() / 16);
    return keep ? Optional.of(new KeptFrames(frameCount())) : Optional.empty();
  }

  /** Frames that this process has rendered so far, whoever asked for them. */
  public static long framesRendered() {
    return SceneRenderer.framesRendered();
  }

  /** Whether all frames are at hand. */
  boolean isKept() {
    return kept != null;
  }

  /** The same for one who keeps the frames, or wants but a few; on one thread. */
  public FrameCursor passingCursor() {
    return cursor(SceneRenderer.Way.QUICK);
  }

  FrameCursor cursor(SceneRenderer.Way way) {
    return cursor(renderer(way), Optional.empty());
  }

  private FrameCursor cursor(FrameSource source, Optional<KeptFrames> keep) {
    return new FrameCursor(source, frameCount(), layout.bytes(), keep, all -> kept = all);
  }

  private FrameSource source(double factor) {
    SceneRenderer renderer = renderer(SceneRenderer.Way.QUICK, factor);
    if (renderer.restsOnThePast()
        || bytes() < LEAST_BYTES_FOR_TWO
        || Runtime.getRuntime().availableProcessors() == 1) {
      return renderer;
    }
    return new PairRenderer(renderer, renderer(SceneRenderer.Way.QUICK, factor), frameCount());
  }

  private SceneRenderer renderer(SceneRenderer.Way way) {
    return renderer(way, sceneFactor.get());
  }

  private SceneRenderer renderer(SceneRenderer.Way way, double factor) {
    return new SceneRenderer(layout, scene, factor, way);
  }

  /**
   * One frame alone.
   *
   * @throws IndexOutOfBoundsException if there is no such frame
   */
  public byte[] frame(int frame) {
    FrameCursor cursor = passingCursor();
    cursor.seek(frame);
    byte[] bytes = new byte[layout.bytes()];
    cursor.next(bytes);
    return bytes;
  }

  /**
   * How the bytes of one pixel come about in a frame. This renders the frame, and where frames rest
   * on the past all before it.
   *
   * @param lamp id of a lamp of the rig
   * @param pixel of the lamp, from 0; 0 for a driver output
   * @throws IndexOutOfBoundsException if there is no such frame or pixel
   * @throws IllegalArgumentException if the rig has no such lamp
   */
  public PixelAccount account(int frame, String lamp, int pixel) {
    Objects.checkIndex(frame, frameCount());
    Lamp named =
        layout
            .rig()
            .lamp(lamp)
            .orElseThrow(
                () -> new IllegalArgumentException("lamp: " + lamp + ": must be of the rig"));
    Objects.checkIndex(pixel, named.fitting().lights());
    return Accountant.of(this, renderer(SceneRenderer.Way.EXACT), frame, named, pixel);
  }

  /**
   * The factor by which the rig's current cap scales the whole scene, 0 to 1; 1 unless the cap is
   * {@link CurrentCap#SCENE}. Found by rendering the scene when it is first asked for.
   */
  public double sceneFactor() {
    return sceneFactor.get();
  }

  private double findSceneFactor() {
    Rig rig = layout.rig();
    if (rig.currentCap() != CurrentCap.SCENE) {
      return 1;
    }
    CurrentLimit limit =
        new CurrentLimit(new FrameCurrent(layout).idleMilliamps(), rig.supplyLimitMilliamps());
    RoundedPeak rounded = new RoundedPeak();
    double found = limit.factor(this::exactPeak, rounded);
    // Of the factor tried last the frames are those of the table.
    if (found == rounded.factor) {
      kept = rounded.frames.filter(KeptFrames::isComplete).orElse(null);
    }
    return found;
  }

  // The greatest current of any frame, before rounding.
  private double exactPeak() {
    SceneRenderer renderer = new SceneRenderer(layout, scene, 1, SceneRenderer.Way.EXACT);
    byte[] frame = new byte[layout.bytes()];
    double peak = 0;
    for (int i = 0; i < frameCount(); i++) {
      renderer.render(i, frame);
      peak = Math.max(peak, renderer.exactMilliamps());
    }
    return peak;
  }

  /** The greatest current of any frame as it is sent. */
  private final class RoundedPeak implements CurrentLimit.CurrentDraw {
    private Optional<KeptFrames> frames = Optional.empty();
    private double factor = Double.NaN;

    @Override
    public double milliamps(double tried) {
      factor = tried;
      frames = room();
      FrameCurrent current = new FrameCurrent(layout);
      SceneRenderer renderer = new SceneRenderer(layout, scene, tried, SceneRenderer.Way.QUICK);
      byte[] frame = new byte[layout.bytes()];
      double peak = 0;
      for (int i = 0; i < frameCount(); i++) {
        renderer.render(i, frame);
        peak = Math.max(peak, current.milliamps(frame));
        if (frames.isPresent()) {
          frames.get().add(i, frame, frame.length);
        }
      }
      return peak;
    }
  }
}
