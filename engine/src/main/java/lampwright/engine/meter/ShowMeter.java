package lampwright.engine.meter;

import com.google.common.math.LongMath;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Coexistence;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.Start;

/**
 * Measures a show over all combinations of situations. In a frame each lamp shows one scene, so the
 * sum of what each draws at most is a bound. It gets closer combination by combination: lamps that
 * a situation has are at the same frame of its scene, and so are all situations that share the
 * show's clock.
 */
final class ShowMeter {
  /** The usual limit of situations of which all sets are tried. */
  static final int MAX_FREE = 12;

  /** The most that is kept of all scenes. */
  private static final long MAX_KEPT_BYTES = 64L << 20;

  /** The most sums, of one part in one frame each, over all combinations. */
  private static final long MAX_SUMS = 300_000_000;

  /** The longest run of frames after which scenes in step repeat together. */
  private static final long MAX_STEP_FRAMES = 100_000;

  private final Show show;
  private final int maxFree;
  private final Rig rig;
  private final Coexistence known;
  private final List<LampParts.Part> parts;
  private final double[] idle;
  private final Map<String, SceneSignals> signals = new HashMap<>();
  // For each lamp the situations that can have it, the one of highest priority first.
  private final List<List<Integer>> wanting = new ArrayList<>();
  private final int second;
  private Worst[] worst = {};
  private Optional<Loudest> flashes = Optional.of(new Loudest(0, new BitSet()));
  private long sums;

  /** The most that a line, or everything, draws, and who has a lamp then. */
  private record Worst(double milliamps, BitSet active) {}

  private record Loudest(int perSecond, BitSet active) {}

  /**
   * @param maxFree the most situations, beside those that are always active, of which all sets are
   *     tried
   */
  ShowMeter(Show show, int maxFree) {
    this.show = show;
    this.maxFree = maxFree;
    this.rig = show.rig();
    this.known = Coexistence.of(show);
    FrameLayout layout = new FrameLayout(rig);
    this.parts = LampParts.of(layout);
    this.idle = idle(layout);
    for (int lamp = 0; lamp < rig.lamps().size(); lamp++) {
      wanting.add(wanting(lamp));
    }
    this.second =
        SecondWindow.frames(
            IntStream.range(0, show.situations().size())
                .mapToObj(show::scene)
                .flatMap(Optional::stream)
                .mapToDouble(scene -> scene.framesPerSecond().doubleValue())
                .findFirst()
                .orElseThrow());
    render();
  }

  // Of each chain, of the outputs, and of everything.
  private double[] idle(FrameLayout layout) {
    List<Chain> chains = rig.chains();
    double[] found = new double[chains.size() + 2];
    for (int i = 0; i < chains.size(); i++) {
      found[i] = chains.get(i).pixels() * chains.get(i).type().idleMilliamps();
    }
    found[found.length - 1] = new FrameCurrent(layout).idleMilliamps();
    return found;
  }

  private List<Integer> wanting(int lamp) {
    List<Integer> found = new ArrayList<>();
    for (int situation : show.wanting(lamp)) {
      if (!known.never(situation)) {
        found.add(situation);
      }
      if (known.always(situation)) {
        break;
      }
    }
    return found;
  }

  private void render() {
    long kept = 0;
    for (int i = 0; i < show.situations().size(); i++) {
      Optional<Scene> scene = show.scene(i);
      if (scene.isPresent() && !signals.containsKey(scene.get().id())) {
        long bytes =
            scene.get().frameCount()
                * ((long) Double.BYTES * parts.size() + (long) Float.BYTES * rig.lamps().size());
        boolean keep = kept + bytes <= MAX_KEPT_BYTES;
        kept += keep ? bytes : 0;
        FrameTable table = FrameTable.of(rig, scene.get());
        signals.put(scene.get().id(), SceneSignals.of(table, parts, rig.chains().size() + 1, keep));
      }
    }
  }

  private SceneSignals of(int situation) {
    return signals.get(show.scene(situation).orElseThrow().id());
  }

  ShowMeasure measure() {
    worst = new Worst[idle.length];
    Arrays.fill(worst, new Worst(0, new BitSet()));
    Set<List<Integer>> sets = owners();
    boolean close = !sets.isEmpty() && signals.values().stream().allMatch(SceneSignals::kept);
    boolean exact = close && sets.size() == 1;
    for (List<Integer> owner : sets) {
      close = close && take(owner);
    }
    if (!close) {
      exact = false;
      coarse();
    } else if (exact) {
      exact = groups(sets.iterator().next()).size() <= 1;
    }
    List<ShowMeasure.Bound> chains = new ArrayList<>();
    for (int i = 0; i < rig.chains().size(); i++) {
      chains.add(bound(rig.chains().get(i).id(), i, exact));
    }
    return new ShowMeasure(
        bound("supply", idle.length - 1, exact),
        chains,
        flashes.map(of -> new ShowMeasure.Flashes(of.perSecond, ids(of.active), flashesAlone())),
        darkLamps());
  }

  private ShowMeasure.Bound bound(String id, int line, boolean exact) {
    double alone = signals.values().stream().mapToDouble(of -> of.linePeaks[line]).max().orElse(0);
    return new ShowMeasure.Bound(
        id, idle[line] + worst[line].milliamps, exact, ids(worst[line].active), idle[line] + alone);
  }

  private List<String> ids(BitSet places) {
    return places.stream().mapToObj(i -> show.situations().get(i).id()).toList();
  }

  private List<String> darkLamps() {
    List<String> dark = new ArrayList<>();
    for (int lamp = 0; lamp < wanting.size(); lamp++) {
      int of = lamp;
      boolean lit =
          wanting.get(lamp).stream()
              .anyMatch(
                  s ->
                      IntStream.range(0, parts.size())
                          .anyMatch(p -> parts.get(p).lamp() == of && of(s).lit[p]));
      if (!show.wanting(lamp).isEmpty() && !lit) {
        dark.add(rig.lamps().get(lamp).id());
      }
    }
    return dark;
  }

  /** Who has each lamp, -1 for nobody, in every combination; empty if they are too many. */
  private Set<List<Integer>> owners() {
    BitSet looked = new BitSet();
    wanting.forEach(of -> of.forEach(looked::set));
    int[] free = looked.stream().filter(i -> !known.always(i)).toArray();
    if (free.length > maxFree) {
      return Set.of();
    }
    Set<List<Integer>> found = new HashSet<>();
    for (int set = 0; set < 1 << free.length; set++) {
      BitSet active = new BitSet();
      looked.stream().filter(known::always).forEach(active::set);
      for (int i = 0; i < free.length; i++) {
        active.set(free[i], (set >> i & 1) != 0);
      }
      if (known.possible(active, looked)) {
        found.add(
            wanting.stream()
                .map(of -> of.stream().filter(active::get).findFirst().orElse(-1))
                .toList());
      }
    }
    return found;
  }

  // Lamps whose scenes are in step: all that one situation has, or all that share a clock.
  private record Group(int frames, boolean loops, List<Integer> situations) {}

  private List<Group> groups(List<Integer> owner) {
    List<Group> groups = new ArrayList<>();
    Group shared = new Group(1, true, new ArrayList<>());
    for (int s : owner.stream().filter(s -> s >= 0).distinct().sorted().toList()) {
      SceneSignals scene = of(s);
      boolean inStep =
          scene.loops && (known.always(s) || show.situations().get(s).start() == Start.SHARED);
      long together =
          shared.frames / LongMath.gcd(shared.frames, scene.frames) * (long) scene.frames;
      if (inStep && together <= Math.max(MAX_STEP_FRAMES, scene.frames)) {
        shared = new Group((int) together, true, shared.situations);
        shared.situations.add(s);
      } else {
        groups.add(new Group(scene.frames, scene.loops, List.of(s)));
      }
    }
    if (!shared.situations.isEmpty()) {
      groups.add(shared);
    }
    return groups;
  }

  // False if that would take too long.
  private boolean take(List<Integer> owner) {
    double[] most = new double[idle.length];
    List<FlashBound.Light> lights = new ArrayList<>();
    for (Group group : groups(owner)) {
      sums += (long) group.frames * parts.size();
      if (sums > MAX_SUMS) {
        return false;
      }
      double[] of = most(group, owner);
      for (int i = 0; i < most.length; i++) {
        most[i] += of[i];
      }
      lights.add(new FlashBound.Light(luminance(group, owner), group.loops));
    }
    for (int i = 0; i < most.length; i++) {
      if (most[i] > worst[i].milliamps) {
        worst[i] = new Worst(most[i], drawing(owner, i));
      }
    }
    BitSet active = new BitSet();
    for (int p = 0; p < parts.size(); p++) {
      int s = owner.get(parts.get(p).lamp());
      if (s >= 0 && of(s).lit[p]) {
        active.set(s);
      }
    }
    int perSecond = FlashBound.perSecond(lights, second);
    flashes = flashes.map(of -> perSecond > of.perSecond ? new Loudest(perSecond, active) : of);
    return true;
  }

  // Who draws something from a line.
  private BitSet drawing(List<Integer> owner, int line) {
    BitSet found = new BitSet();
    for (int p = 0; p < parts.size(); p++) {
      int s = owner.get(parts.get(p).lamp());
      boolean fed = line == idle.length - 1 || parts.get(p).line() == line;
      if (s >= 0 && fed && of(s).peaks[p] > 0) {
        found.set(s);
      }
    }
    return found;
  }

  private double[] most(Group group, List<Integer> owner) {
    int[] own =
        IntStream.range(0, parts.size())
            .filter(p -> group.situations.contains(owner.get(parts.get(p).lamp())))
            .toArray();
    double[][] milliamps = new double[own.length][];
    for (int i = 0; i < own.length; i++) {
      milliamps[i] = of(owner.get(parts.get(own[i]).lamp())).milliamps[own[i]];
    }
    double[] most = new double[idle.length];
    double[] now = new double[idle.length];
    for (int frame = 0; frame < group.frames; frame++) {
      Arrays.fill(now, 0);
      for (int i = 0; i < own.length; i++) {
        double part = milliamps[i][frame % milliamps[i].length];
        now[parts.get(own[i]).line()] += part;
        now[now.length - 1] += part;
      }
      for (int i = 0; i < most.length; i++) {
        most[i] = Math.max(most[i], now[i]);
      }
    }
    return most;
  }

  private double[] luminance(Group group, List<Integer> owner) {
    double[] sum = new double[group.frames];
    for (int lamp = 0; lamp < owner.size(); lamp++) {
      if (group.situations.contains(owner.get(lamp))) {
        SceneSignals scene = of(owner.get(lamp));
        for (int frame = 0; frame < sum.length; frame++) {
          sum[frame] += scene.light[lamp][frame % scene.frames];
        }
      }
    }
    return sum;
  }

  private int flashesAlone() {
    int most = 0;
    for (int s = 0; s < show.situations().size(); s++) {
      if (show.scene(s).isPresent()) {
        SceneSignals scene = of(s);
        double[] sum = new double[scene.frames];
        for (float[] lamp : scene.light) {
          for (int frame = 0; frame < sum.length; frame++) {
            sum[frame] += lamp[frame];
          }
        }
        FlashBound.Light light = new FlashBound.Light(sum, scene.loops);
        most = Math.max(most, FlashBound.perSecond(List.of(light), second));
      }
    }
    return most;
  }

  // Each part at its most, whoever has it.
  private void coarse() {
    flashes = Optional.empty();
    double[] most = new double[idle.length];
    List<BitSet> active = new ArrayList<>();
    for (int i = 0; i < most.length; i++) {
      active.add(new BitSet());
    }
    for (int p = 0; p < parts.size(); p++) {
      int part = p;
      Optional<Integer> owner =
          wanting.get(parts.get(p).lamp()).stream()
              .max((a, b) -> Double.compare(of(a).peaks[part], of(b).peaks[part]));
      if (owner.isPresent() && of(owner.get()).peaks[p] > 0) {
        for (int line : new int[] {parts.get(p).line(), most.length - 1}) {
          most[line] += of(owner.get()).peaks[p];
          active.get(line).set(owner.get());
        }
      }
    }
    for (int i = 0; i < most.length; i++) {
      worst[i] = new Worst(most[i], active.get(i));
    }
  }
}
