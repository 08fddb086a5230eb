package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/** The bench test of a chain: a scene that walks it. */
public final class ChainWalk {
  /**
   * Low enough that a whole chain of pixels lit by mistake draws little, and that one can look at
   * them: level 0.3 is 0.07 of the light by the default curve.
   */
  public static final double TEST_LEVEL = 0.3;

  private static final BigDecimal TEST_STEP_MS = BigDecimal.valueOf(500);

  private ChainWalk() {}

  /**
   * Adds a scene that walks a chain pixel by pixel and emitter by emitter, at a low level. Pixels
   * that no lamp has become a lamp first, so that all are walked.
   */
  public static Project add(Project project, String chain) {
    Chain tested =
        project.rig().chains().stream().filter(c -> c.id().equals(chain)).findFirst().orElseThrow();
    Project with = project;
    Set<Integer> free = ChainEdits.free(project.rig(), tested);
    if (!free.isEmpty()) {
      with = LampEdits.addOfPixels(project, chain, free);
    }
    // In the order of the data line as far as whole lamps allow.
    List<Lamp> lamps =
        with.rig().lamps().stream()
            .filter(l -> first(l, chain).isPresent())
            .sorted(Comparator.comparing(l -> first(l, chain).orElseThrow()))
            .toList();
    int pixels = lamps.stream().mapToInt(lamp -> lamp.fitting().lights()).sum();
    long steps = (long) pixels * tested.order().size();
    long stepMs = Math.max(1, Math.min(TEST_STEP_MS.longValue(), 3_600_000 / steps));
    long lengthMs = steps * stepMs;
    TestWalk walk =
        new TestWalk(
            new Look(Colour.WHITE, TEST_LEVEL), BigDecimal.ZERO, BigDecimal.valueOf(stepMs));
    Track track =
        new Track(
            lamps.stream().map(Lamp::id).toList(), Span.JOINED, List.of(Cue.of(0, lengthMs, walk)));
    Scene scene = Scene.TRACKS.with(Projects.emptyScene(testId(with), lengthMs), List.of(track));
    List<Scene> scenes = new ArrayList<>(with.scenes());
    scenes.add(scene);
    return Project.SCENES.with(with, scenes);
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
}
