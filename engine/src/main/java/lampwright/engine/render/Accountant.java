package lampwright.engine.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Moment;

/**
 * Writes down what the renderer does for one pixel. It works out nothing that decides a byte: a
 * second arithmetic would be another truth.
 */
final class Accountant implements RenderWatcher {
  private final FrameTable table;
  private final SceneRenderer renderer;
  private final Mixer[] mixers;
  private final Lamp lamp;
  private final int pixel;
  private final int at;

  /** The columns of the pixel, in order. */
  private final int[] columns;

  /** The slot of each of them within its package. */
  private final int[] slots;

  private final List<PixelAccount.Layer> layers = new ArrayList<>();
  private List<Double> painted = List.of();
  private List<Double> under = List.of();

  /** The cue that is under way, if it is one of the lamp's. */
  private Optional<PixelAccount.Layer> open = Optional.empty();

  private List<Double> mixed = List.of();
  private List<Double> felt = List.of();
  private List<Double> carried = List.of();
  private double frameFactor = 1;

  private Accountant(FrameTable table, SceneRenderer renderer, Lamp lamp, int pixel) {
    FrameLayout layout = table.layout();
    this.table = table;
    this.renderer = renderer;
    this.lamp = lamp;
    this.pixel = pixel;
    this.at = layout.packagesOf(lamp)[pixel];
    this.mixers = SceneRenderer.mixers(layout.rig());
    int[] all = layout.slots();
    List<Integer> own = new ArrayList<>();
    for (int i = 0; i < all.length; i++) {
      if (all[i] / Mixer.SLOTS == at) {
        own.add(i);
      }
    }
    this.columns = own.stream().mapToInt(Integer::intValue).toArray();
    this.slots = own.stream().mapToInt(i -> all[i] % Mixer.SLOTS).toArray();
  }

  /** The account of a frame, rendered for it alone. */
  static PixelAccount of(
      FrameTable table, SceneRenderer renderer, int frame, Lamp lamp, int pixel) {
    byte[] bytes = new byte[table.layout().bytes()];
    for (int before = renderer.restsOnThePast() ? 0 : frame; before < frame; before++) {
      renderer.render(before, bytes);
    }
    Accountant accountant = new Accountant(table, renderer, lamp, pixel);
    renderer.watch(accountant);
    renderer.render(frame, bytes);
    renderer.watch(NOBODY);
    return accountant.account(frame, bytes);
  }

  @Override
  public void begins(CuePlayer cue, Moment sinceStartMs, double faded, double a, Light light) {
    int trackAt = renderer.trackOf(cue);
    Track track = table.scene().tracks().get(trackAt);
    if (!track.lamps().contains(lamp.id())) {
      open = Optional.empty();
      return;
    }
    Cue described = track.cues().get(cue.place());
    Pattern pattern = described.pattern();
    under = drives(light);
    painted = List.of();
    open =
        Optional.of(
            new PixelAccount.Layer(
                trackAt,
                cue.place(),
                sinceStartMs.ratio().doubleValue(),
                place(pattern, track, sinceStartMs),
                table.layout().rig().curve().light(pattern.look().level()),
                colour(pattern),
                faded,
                a,
                painted,
                under,
                under));
  }

  private Optional<PixelAccount.Place> place(Pattern pattern, Track track, Moment sinceStartMs) {
    int[] row =
        SceneRenderer.rows(table.layout(), track).stream()
            .filter(r -> Arrays.stream(r).anyMatch(p -> p == at))
            .findFirst()
            .orElseThrow();
    List<Mixer> seen = Arrays.stream(row).mapToObj(p -> mixers[p]).toList();
    return pattern
        .period(seen)
        .map(
            period ->
                new PixelAccount.Place(
                    period.doubleValue(),
                    Patterns.placeInPeriod(pattern, seen, sinceStartMs).doubleValue()));
  }

  private List<Double> colour(Pattern pattern) {
    double[] drives = new double[Mixer.SLOTS];
    mixers[at].mix(pattern.look().colour()).write(1, drives, 0);
    return Arrays.stream(slots).mapToObj(slot -> drives[slot]).toList();
  }

  @Override
  public void paints(PackageRuns packages, double[] row) {
    if (open.isPresent()) {
      packages
          .placeOf(at)
          .ifPresent(
              k -> painted = Arrays.stream(slots).mapToObj(s -> row[k * Mixer.SLOTS + s]).toList());
    }
  }

  @Override
  public void ends(Light light) {
    open.ifPresent(layer -> closed(layer, light));
  }

  private void closed(PixelAccount.Layer layer, Light light) {
    layers.add(
        new PixelAccount.Layer(
            layer.track(),
            layer.cue(),
            layer.sinceStartMs(),
            layer.period(),
            layer.levelLight(),
            layer.fullColour(),
            layer.faded(),
            layer.a(),
            painted,
            under,
            drives(light)));
  }

  @Override
  public void mixed(Light light) {
    mixed = drives(light);
  }

  @Override
  public void felt(Light light) {
    felt = drives(light);
  }

  @Override
  public void scales(double factor, Quantiser quantiser) {
    frameFactor = factor;
    carried = Arrays.stream(columns).mapToObj(quantiser::carried).toList();
  }

  private List<Double> drives(Light light) {
    return Arrays.stream(slots).mapToObj(s -> light.drives()[at * Mixer.SLOTS + s]).toList();
  }

  private PixelAccount account(int frame, byte[] bytes) {
    FrameLayout layout = table.layout();
    double cap = layout.rig().brightnessCap();
    double sceneFactor = table.sceneFactor();
    List<Column> all = layout.columns();
    List<PixelAccount.ByteStep> steps = new ArrayList<>();
    for (int i = 0; i < columns.length; i++) {
      Optional<EmitterKind> emitter =
          all.get(columns[i]).source() instanceof Column.PixelEmitter pixelEmitter
              ? Optional.of(pixelEmitter.emitter())
              : Optional.empty();
      steps.add(
          new PixelAccount.ByteStep(
              emitter,
              columns[i],
              mixed.get(i),
              felt.get(i),
              felt.get(i) * (renderer.factor() * frameFactor),
              carried.get(i),
              bytes[columns[i]] & 0xFF));
    }
    Moment time = new Moment();
    new FrameClock(table.scene().framesPerSecond()).timeMs(frame, time);
    return new PixelAccount(
        frame, time.ratio().doubleValue(), pixel, layers, cap, sceneFactor, frameFactor, steps);
  }
}
