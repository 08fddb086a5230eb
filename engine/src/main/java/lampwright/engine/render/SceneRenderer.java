package lampwright.engine.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.DoubleSupplier;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Mixer;
import lampwright.engine.light.Mixers;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Moment;

/**
 * Light flows through here: tracks in order onto the drives, then feel, then caps, then bytes.
 * Asked for frames in rising order, or rewound in between.
 */
final class SceneRenderer implements FrameSource {
  /** How light is worked out. The bytes are the same. */
  enum Way {
    /** Quickly where that decides every byte, else exactly. */
    QUICK,
    /** As DESIGN's arithmetic has it. */
    EXACT
  }

  private static final LongAdder FRAMES = new LongAdder();

  private final FrameLayout layout;
  private final FrameClock clock;
  private final int frameCount;
  private final boolean loop;
  private final boolean dither;
  private final FeelStage feel;
  private final Quantiser quantiser;
  private final FrameCurrent current;
  private final CurrentLimit limit;
  private final double factor;
  private final Light light;
  private final DoubleSupplier exactSum = this::exactMilliamps;
  private final CurrentLimit.CurrentDraw draw;
  private boolean exact;
  private final List<TrackPlayer> tracks;
  private final Layers layers;
  private RenderWatcher watcher = RenderWatcher.NOBODY;
  private final Moment timeMs = new Moment();

  /**
   * @param sceneFactor by which the scene's current cap scales every drive, 0 to 1
   */
  SceneRenderer(FrameLayout layout, Scene scene, double sceneFactor, Way way) {
    this.layout = layout;
    this.current = new FrameCurrent(layout);
    this.limit = new CurrentLimit(current.idleMilliamps(), layout.rig().supplyLimitMilliamps());
    this.factor = layout.rig().brightnessCap() * sceneFactor;
    this.clock = new FrameClock(scene.framesPerSecond());
    this.frameCount = scene.frameCount();
    this.loop = scene.loop();
    this.dither = scene.dither() == Dither.TEMPORAL;
    this.feel = new FeelStage(layout, clock.frameMs());
    this.quantiser = new Quantiser(layout, dither);
    this.light = new Light(layout.packages());
    this.draw = f -> current.milliamps(quantiser.tried(light, factor * f));
    this.exact = dither || way == Way.EXACT;
    double[] scratch = new double[layout.packages() * Mixer.SLOTS];
    List<TrackPlayer> tracks = new ArrayList<>();
    Mixer[] mixers = mixers(layout.rig());
    for (Track track : scene.tracks()) {
      tracks.add(
          new TrackPlayer(
              tracks.size(),
              track,
              rows(layout, track),
              mixers,
              scratch,
              clock,
              layout.rig().curve()));
    }
    this.tracks = List.copyOf(tracks);
    boolean[] changed = new boolean[layout.packages()];
    feel.mark(changed);
    this.layers = new Layers(tracks, changed);
    rewind();
  }

  /** Tells somebody all steps of the frames from now on. */
  void watch(RenderWatcher newWatcher) {
    watcher = newWatcher;
  }

  /** By which every drive is multiplied: the caps of rig and scene. */
  double factor() {
    return factor;
  }

  /** The track that a cue is on. */
  int trackOf(CuePlayer cue) {
    return tracks.stream().filter(track -> track.has(cue)).findFirst().orElseThrow().place();
  }

  /** Frames that this process has rendered. */
  static long framesRendered() {
    return FRAMES.sum();
  }

  int frameBytes() {
    return layout.bytes();
  }

  /** Whether a frame cannot be rendered without those before it. */
  @Override
  public boolean restsOnThePast() {
    return dither || feel.present();
  }

  /** Makes ready for any frame, or for the first one if frames rest on the past. */
  @Override
  public void rewind() {
    layers.rewind();
    quantiser.reset();
    feel.reset();
    if (loop && feel.present()) {
      // Of a loop the second run round is kept, so that the seam does not show.
      for (int frame = 0; frame < frameCount; frame++) {
        shine(frame);
      }
      layers.rewind();
    }
  }

  /** Writes the bytes of a frame. */
  @Override
  public void render(int frame, byte[] into) {
    FRAMES.increment();
    shine(frame);
    if (!write(into)) {
      shineExactly(frame);
      write(into);
    }
  }

  // Gives false if exact light could have another byte.
  private boolean write(byte[] into) {
    double frameFactor = 1;
    if (layout.rig().currentCap() == CurrentCap.FRAME) {
      frameFactor = limit.factor(exactSum, draw);
      if (frameFactor != 1 && !light.isExact()) {
        // It rests on the sum of all drives.
        return false;
      }
    }
    watcher.scales(frameFactor, quantiser);
    return quantiser.write(light, factor * frameFactor, into);
  }

  private void shineExactly(int frame) {
    exact = true;
    if (restsOnThePast()) {
      // So do all frames from here on.
      rewind();
      for (int before = 0; before < frame; before++) {
        shine(before);
      }
    }
    shine(frame);
    exact = restsOnThePast();
  }

  /** Current of a frame before rounding, in mA; the frame must have been rendered last. */
  double exactMilliamps() {
    int[] slots = layout.slots();
    double[] drives = light.drives();
    double sum = current.idleMilliamps();
    for (int i = 0; i < slots.length; i++) {
      sum += current.fullMilliamps(i) * drives[slots[i]] * factor;
    }
    return sum;
  }

  private void shine(int frame) {
    FrameSource.endIfInterrupted();
    light.begin(exact);
    clock.timeMs(frame, timeMs);
    layers.play(frame, timeMs, light, watcher);
    watcher.mixed(light);
    feel.follow(light);
    watcher.felt(light);
  }

  /** The rows of packages that a pattern on a track sees. */
  static List<int[]> rows(FrameLayout layout, Track track) {
    List<int[]> each =
        track.lamps().stream()
            .map(id -> layout.packagesOf(layout.rig().lamp(id).orElseThrow()))
            .toList();
    if (track.span() == Span.EACH) {
      return each;
    }
    return List.of(each.stream().flatMapToInt(Arrays::stream).toArray());
  }

  /**
   * The mixer of each package. Packages with the same emitters share one, so that patterns mix a
   * colour once for all.
   */
  static Mixer[] mixers(Rig rig) {
    // A list: to hash the only chain's emitters takes a short command longer than its frames.
    List<Map<EmitterKind, FittedEmitter>> known = new ArrayList<>();
    List<Mixer> ofKnown = new ArrayList<>();
    List<Mixer> mixers = new ArrayList<>();
    for (Chain chain : rig.chains()) {
      Map<EmitterKind, FittedEmitter> emitters = chain.fittedEmitters();
      int at = known.indexOf(emitters);
      if (at < 0) {
        at = known.size();
        known.add(emitters);
        ofKnown.add(
            Mixers.forPixel(rig.curve(), rig.colourMatching(), rig.whiteFromRgb(), emitters));
      }
      Mixer mixer = ofKnown.get(at);
      for (int pixel = 0; pixel < chain.pixels(); pixel++) {
        mixers.add(mixer);
      }
    }
    Mixer output = Mixers.forOutput(rig.curve());
    rig.outputs().forEach(o -> mixers.add(output));
    return mixers.toArray(Mixer[]::new);
  }
}
