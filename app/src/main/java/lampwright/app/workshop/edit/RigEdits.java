package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.project.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/** What is done to a rig: parts are added, renamed and removed, and what rests on them follows. */
public final class RigEdits {
  /**
   * Low enough that a whole chain of pixels lit by mistake draws little, and that one can look at
   * them: level 0.3 is 0.07 of the light by the default curve.
   */
  public static final double TEST_LEVEL = 0.3;

  private static final BigDecimal TEST_STEP_MS = BigDecimal.valueOf(500);

  private RigEdits() {}

  /** Adds a chain of eight pixels of the type that the last chain has. */
  public static Project addChain(Project project) {
    Rig rig = project.rig();
    List<Chain> chains = new ArrayList<>(rig.chains());
    String id = Projects.freeId("chain", chains.stream().map(Chain::id).toList());
    chains.add(
        new Chain(
            id,
            chains.isEmpty()
                ? BuiltInPixelTypes.find("ws2812b").orElseThrow()
                : chains.get(chains.size() - 1).type(),
            8));
    return project.withRig(rig.withChains(chains));
  }

  /** Adds a driver output. */
  public static Project addOutput(Project project) {
    Rig rig = project.rig();
    List<DriverOutput> outputs = new ArrayList<>(rig.outputs());
    outputs.add(
        DriverOutput.of(
            Projects.freeId("output", outputs.stream().map(DriverOutput::id).toList())));
    return project.withRig(rig.withOutputs(outputs));
  }

  /** Adds a pixel type of one's own: a copy of another. */
  public static Project addType(Project project, PixelType of) {
    List<PixelType> types = new ArrayList<>(project.pixelTypes());
    String id = Projects.freeId("my-pixels", types.stream().map(PixelType::id).toList());
    types.add(PixelTypeSettings.withId(of, id));
    return project.withPixelTypes(types);
  }

  /** Changes a pixel type of one's own, and the chains that have it. */
  public static Project inType(Project project, String id, UnaryOperator<PixelType> change) {
    List<PixelType> types =
        project.pixelTypes().stream().map(t -> t.id().equals(id) ? change.apply(t) : t).toList();
    List<Chain> chains =
        project.rig().chains().stream()
            .map(
                c ->
                    c.type().id().equals(id)
                        ? new Chain(
                            c.id(),
                            change.apply(c.type()),
                            c.pixels(),
                            c.order(),
                            c.whiteKelvin(),
                            c.pin())
                        : c)
            .toList();
    return new Project(
        project.name(),
        types,
        project.rig().withChains(chains),
        project.pictures(),
        project.scenes());
  }

  /** Changes a chain. */
  public static Project inChain(Project project, String id, UnaryOperator<Chain> change) {
    Rig rig = project.rig();
    return project.withRig(
        rig.withChains(
            rig.chains().stream().map(c -> c.id().equals(id) ? change.apply(c) : c).toList()));
  }

  /** Changes an output. */
  public static Project inOutput(Project project, String id, UnaryOperator<DriverOutput> change) {
    Rig rig = project.rig();
    return project.withRig(
        rig.withOutputs(
            rig.outputs().stream().map(o -> o.id().equals(id) ? change.apply(o) : o).toList()));
  }

  /** Changes a lamp. */
  public static Project inLamp(Project project, String id, UnaryOperator<Lamp> change) {
    Rig rig = project.rig();
    return project.withRig(
        rig.withLamps(
            rig.lamps().stream().map(l -> l.id().equals(id) ? change.apply(l) : l).toList()));
  }

  /** Renames a chain, in the lamps too. */
  public static Project renameChain(Project project, String from, String to) {
    Rig rig = project.rig();
    List<Chain> chains =
        rig.chains().stream()
            .map(
                c ->
                    c.id().equals(from)
                        ? new Chain(to, c.type(), c.pixels(), c.order(), c.whiteKelvin(), c.pin())
                        : c)
            .toList();
    List<Lamp> lamps =
        rig.lamps().stream()
            .map(
                l ->
                    runs(
                        l,
                        run ->
                            run.chain().equals(from)
                                ? Optional.of(new PixelRun(to, run.from(), run.count()))
                                : Optional.of(run)))
            .flatMap(Optional::stream)
            .toList();
    return project.withRig(rig.with(chains, rig.outputs(), lamps));
  }

  /** Renames an output, in its lamp too. */
  public static Project renameOutput(Project project, String from, String to) {
    Rig rig = project.rig();
    List<DriverOutput> outputs =
        rig.outputs().stream()
            .map(
                o ->
                    o.id().equals(from)
                        ? new DriverOutput(
                            to,
                            o.colour(),
                            o.milliamps(),
                            o.ledsInSeries(),
                            o.forwardVolts(),
                            o.supply(),
                            o.pin())
                        : o)
            .toList();
    List<Lamp> lamps =
        rig.lamps().stream()
            .map(
                l ->
                    l.fitting() instanceof Fitting.Output f && f.output().equals(from)
                        ? l.withFitting(new Fitting.Output(to))
                        : l)
            .toList();
    return project.withRig(rig.with(rig.chains(), outputs, lamps));
  }

  /** Renames a lamp, in the scenes too. */
  public static Project renameLamp(Project project, String from, String to) {
    Rig rig = project.rig();
    List<Lamp> lamps =
        rig.lamps().stream().map(l -> l.id().equals(from) ? l.withId(to) : l).toList();
    List<Scene> scenes =
        tracks(
            project,
            t ->
                Optional.of(
                    t.withLamps(t.lamps().stream().map(l -> l.equals(from) ? to : l).toList())));
    return rebuilt(project, rig.withLamps(lamps), scenes);
  }

  /** Shortens or lengthens a chain; lamps lose the pixels that it no longer has. */
  public static Project setPixels(Project project, String chain, int pixels) {
    Rig rig = project.rig();
    List<Chain> chains =
        rig.chains().stream()
            .map(
                c ->
                    c.id().equals(chain)
                        ? new Chain(c.id(), c.type(), pixels, c.order(), c.whiteKelvin(), c.pin())
                        : c)
            .toList();
    return withRuns(
        project,
        rig,
        chains,
        run ->
            !run.chain().equals(chain)
                ? Optional.of(run)
                : run.from() >= pixels
                    ? Optional.empty()
                    : Optional.of(
                        new PixelRun(
                            chain, run.from(), Math.min(run.count(), pixels - run.from()))));
  }

  /** The lamps that would lose pixels if a chain had this many. */
  public static List<Lamp> cutBy(Rig rig, String chain, int pixels) {
    return rig.lamps().stream()
        .filter(
            l ->
                l.fitting() instanceof Fitting.Pixels f
                    && f.runs().stream().anyMatch(r -> r.chain().equals(chain) && r.end() > pixels))
        .toList();
  }

  /** Removes a chain, and lamps that are left without pixels. */
  public static Project removeChain(Project project, String chain) {
    List<Chain> chains =
        project.rig().chains().stream().filter(c -> !c.id().equals(chain)).toList();
    return withRuns(
        project,
        project.rig(),
        chains,
        run -> run.chain().equals(chain) ? Optional.empty() : Optional.of(run));
  }

  /** Removes an output and its lamp. */
  public static Project removeOutput(Project project, String output) {
    Rig rig = project.rig();
    List<DriverOutput> outputs =
        rig.outputs().stream().filter(o -> !o.id().equals(output)).toList();
    List<Lamp> lamps =
        rig.lamps().stream()
            .filter(l -> !(l.fitting() instanceof Fitting.Output f && f.output().equals(output)))
            .toList();
    return without(project, rig, rig.chains(), outputs, lamps);
  }

  /** Removes a lamp, and what it does in the scenes. */
  public static Project removeLamp(Project project, String lamp) {
    Rig rig = project.rig();
    return without(
        project,
        rig,
        rig.chains(),
        rig.outputs(),
        rig.lamps().stream().filter(l -> !l.id().equals(lamp)).toList());
  }

  /**
   * Makes a lamp of pixels that no lamp has.
   *
   * @param pixels their numbers
   */
  public static Project addLamp(Project project, String chain, Set<Integer> pixels) {
    String id = Projects.freeId("lamp", project.rig().lamps().stream().map(Lamp::id).toList());
    Lamp lamp = Lamp.ofPixels(id, runs(chain, pixels).toArray(PixelRun[]::new));
    return withLamp(project, lamp);
  }

  /** Makes a lamp of an output that no lamp has. */
  public static Project addLampOfOutput(Project project, String output) {
    Set<String> taken = project.rig().lamps().stream().map(Lamp::id).collect(Collectors.toSet());
    String id = taken.contains(output) ? Projects.freeId("lamp", taken) : output;
    return withLamp(project, Lamp.ofOutput(id, output));
  }

  /** The pixels of a chain that no lamp has. */
  public static Set<Integer> free(Rig rig, Chain chain) {
    BitSet taken = new BitSet();
    for (Lamp lamp : rig.lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels f) {
        f.runs().stream()
            .filter(r -> r.chain().equals(chain.id()))
            .forEach(r -> taken.set(r.from(), r.end()));
      }
    }
    Set<Integer> free = new java.util.TreeSet<>();
    for (int i = 0; i < chain.pixels(); i++) {
      if (!taken.get(i)) {
        free.add(i);
      }
    }
    return free;
  }

  /**
   * Adds a scene that walks a chain pixel by pixel and emitter by emitter, at a low level. Pixels
   * that no lamp has become a lamp first, so that all are walked.
   */
  public static Project benchTest(Project project, String chain) {
    Chain tested =
        project.rig().chains().stream().filter(c -> c.id().equals(chain)).findFirst().orElseThrow();
    Project with = project;
    Set<Integer> free = free(project.rig(), tested);
    if (!free.isEmpty()) {
      with = addLamp(project, chain, free);
    }
    // In the order of the data line as far as whole lamps allow.
    List<Lamp> lamps =
        with.rig().lamps().stream()
            .filter(l -> first(l, chain).isPresent())
            .sorted(java.util.Comparator.comparing(l -> first(l, chain).orElseThrow()))
            .toList();
    int pixels =
        lamps.stream()
            .mapToInt(
                l -> ((Fitting.Pixels) l.fitting()).runs().stream().mapToInt(PixelRun::count).sum())
            .sum();
    long steps = (long) pixels * tested.order().size();
    long stepMs = Math.max(1, Math.min(TEST_STEP_MS.longValue(), 3_600_000 / steps));
    long lengthMs = steps * stepMs;
    TestWalk walk =
        new TestWalk(
            new Look(Colour.WHITE, TEST_LEVEL), BigDecimal.ZERO, BigDecimal.valueOf(stepMs));
    Track track =
        new Track(
            lamps.stream().map(Lamp::id).toList(), Span.JOINED, List.of(Cue.of(0, lengthMs, walk)));
    Scene scene = Projects.emptyScene(testId(with), lengthMs).withTracks(List.of(track));
    List<Scene> scenes = new ArrayList<>(with.scenes());
    scenes.add(scene);
    return with.withScenes(scenes);
  }

  private static String testId(Project project) {
    Set<String> taken = project.scenes().stream().map(Scene::id).collect(Collectors.toSet());
    return taken.contains("bench-test") ? Projects.freeId("bench-test", taken) : "bench-test";
  }

  private static Optional<Integer> first(Lamp lamp, String chain) {
    return lamp.fitting() instanceof Fitting.Pixels f
        ? f.runs().stream()
            .filter(r -> r.chain().equals(chain))
            .map(PixelRun::from)
            .min(Integer::compare)
        : Optional.empty();
  }

  private static Project withLamp(Project project, Lamp lamp) {
    List<Lamp> lamps = new ArrayList<>(project.rig().lamps());
    lamps.add(lamp);
    return project.withRig(project.rig().withLamps(lamps));
  }

  private static List<PixelRun> runs(String chain, Set<Integer> pixels) {
    List<PixelRun> runs = new ArrayList<>();
    for (int pixel : new java.util.TreeSet<>(pixels)) {
      PixelRun last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
      if (last != null && last.end() == pixel) {
        runs.set(runs.size() - 1, new PixelRun(chain, last.from(), last.count() + 1));
      } else {
        runs.add(new PixelRun(chain, pixel, 1));
      }
    }
    return runs;
  }

  /** Changes each run of pixels; lamps without any are removed, with what they do. */
  private static Project withRuns(
      Project project,
      Rig rig,
      List<Chain> chains,
      java.util.function.Function<PixelRun, Optional<PixelRun>> change) {
    List<Lamp> lamps =
        rig.lamps().stream().map(l -> runs(l, change)).flatMap(Optional::stream).toList();
    return without(project, rig, chains, rig.outputs(), lamps);
  }

  private static Optional<Lamp> runs(
      Lamp lamp, java.util.function.Function<PixelRun, Optional<PixelRun>> change) {
    if (!(lamp.fitting() instanceof Fitting.Pixels f)) {
      return Optional.of(lamp);
    }
    List<PixelRun> kept = f.runs().stream().map(change).flatMap(Optional::stream).toList();
    return kept.isEmpty()
        ? Optional.empty()
        : Optional.of(lamp.withFitting(new Fitting.Pixels(kept)));
  }

  private static Project without(
      Project project, Rig rig, List<Chain> chains, List<DriverOutput> outputs, List<Lamp> lamps) {
    Set<String> known = new HashSet<>(lamps.stream().map(Lamp::id).toList());
    List<Scene> scenes =
        tracks(
            project,
            t -> {
              List<String> kept = t.lamps().stream().filter(known::contains).toList();
              return kept.isEmpty() ? Optional.empty() : Optional.of(t.withLamps(kept));
            });
    return rebuilt(project, rig.with(chains, outputs, lamps), scenes);
  }

  // Both at once: between them tracks would name lamps that are not there.
  private static Project rebuilt(Project project, Rig rig, List<Scene> scenes) {
    return new Project(project.name(), project.pixelTypes(), rig, project.pictures(), scenes);
  }

  private static List<Scene> tracks(
      Project project, java.util.function.Function<Track, Optional<Track>> change) {
    return project.scenes().stream()
        .map(s -> s.withTracks(s.tracks().stream().map(change).flatMap(Optional::stream).toList()))
        .toList();
  }
}
