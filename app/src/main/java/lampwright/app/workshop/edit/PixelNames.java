package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;

/**
 * Which lamp each pixel of a chain is, as a builder found by looking at them.
 *
 * @param chain its id
 * @param lamps by the number of a pixel the id of its lamp, which may be a new one; empty where the
 *     pixel is of no lamp. Pixels that are not in it were not looked at
 */
public record PixelNames(String chain, NavigableMap<Integer, Optional<String>> lamps) {
  public PixelNames {
    lamps = new TreeMap<>(lamps);
  }

  /** None was looked at yet. */
  public static PixelNames none(String chain) {
    return new PixelNames(chain, new TreeMap<>());
  }

  /** With one more. */
  public PixelNames with(int pixel, Optional<String> lamp) {
    NavigableMap<Integer, Optional<String>> more = new TreeMap<>(lamps);
    more.put(pixel, lamp);
    return new PixelNames(chain, more);
  }

  /** Without one: it was not looked at. */
  public PixelNames without(int pixel) {
    NavigableMap<Integer, Optional<String>> fewer = new TreeMap<>(lamps);
    fewer.remove(pixel);
    return new PixelNames(chain, fewer);
  }

  /** The lamps that would be left without any pixel. */
  public List<Lamp> emptied(Project project) {
    return project.rig().lamps().stream()
        .filter(lamp -> fitting(lamp).filter(runs -> runs.isEmpty()).isPresent())
        .toList();
  }

  /**
   * Gives the lamps their pixels, in data order; lamps that are new come last. A lamp of which no
   * pixel was looked at, and that got none, stays as it is.
   *
   * @throws lampwright.engine.check.InvalidModelException if a lamp would be left without pixels
   */
  public Project apply(Project project) {
    Rig rig = project.rig();
    List<Lamp> changed = new ArrayList<>();
    for (Lamp lamp : rig.lamps()) {
      changed.add(
          fitting(lamp)
              .map(runs -> Lamp.FITTING.with(lamp, new Fitting.Pixels(runs)))
              .orElse(lamp));
    }
    Set<String> known = rig.lamps().stream().map(Lamp::id).collect(Collectors.toSet());
    for (String id : new LinkedHashSet<>(named())) {
      if (!known.contains(id)) {
        changed.add(Lamp.ofPixels(id, runs(pixelsOf(id)).toArray(PixelRun[]::new)));
      }
    }
    return Project.RIG.with(project, Rig.LAMPS.with(rig, changed));
  }

  private List<String> named() {
    return lamps.values().stream().flatMap(Optional::stream).toList();
  }

  private Set<Integer> pixelsOf(String lamp) {
    return lamps.entrySet().stream()
        .filter(entry -> entry.getValue().equals(Optional.of(lamp)))
        .map(Map.Entry::getKey)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  // The runs that a lamp has then; none if it stays as it is.
  private Optional<List<PixelRun>> fitting(Lamp lamp) {
    if (!(lamp.fitting() instanceof Fitting.Pixels pixels)) {
      return Optional.empty();
    }
    Set<Integer> before = new HashSet<>();
    List<PixelRun> elsewhere = new ArrayList<>();
    for (PixelRun run : pixels.runs()) {
      if (run.chain().equals(chain)) {
        for (int pixel = run.from(); pixel < run.end(); pixel++) {
          before.add(pixel);
        }
      } else {
        elsewhere.add(run);
      }
    }
    Set<Integer> now = pixelsOf(lamp.id());
    boolean touched = !now.isEmpty() || before.stream().anyMatch(lamps::containsKey);
    if (!touched) {
      return Optional.empty();
    }
    before.removeAll(lamps.keySet());
    now.addAll(before);
    if (now.equals(pixelSet(pixels))) {
      // The same pixels: an order of its own stays.
      return Optional.empty();
    }
    elsewhere.addAll(runs(now));
    return Optional.of(elsewhere);
  }

  private Set<Integer> pixelSet(Fitting.Pixels pixels) {
    Set<Integer> all = new TreeSet<>();
    for (PixelRun run : pixels.runs()) {
      for (int pixel = run.from(); run.chain().equals(chain) && pixel < run.end(); pixel++) {
        all.add(pixel);
      }
    }
    return all;
  }

  private List<PixelRun> runs(Collection<Integer> pixels) {
    return LampEdits.runs(chain, new TreeSet<>(pixels));
  }
}
