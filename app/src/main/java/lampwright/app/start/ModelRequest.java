package lampwright.app.start;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.app.outline.Models;
import lampwright.app.outline.UsualLamp;
import lampwright.app.outline.UsualLamps;
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.Controller;
import lampwright.exporters.target.Target;

/**
 * What a new model is to have.
 *
 * @param kind what it is
 * @param name of the project, for people
 * @param controller what plays its light
 * @param counts how many lamps of each group there are, by the group's key: all groups that such a
 *     model usually has, in their order, 0 where there are none
 */
public record ModelRequest(
    ModelKind kind, String name, Controller controller, ImmutableMap<String, Integer> counts) {
  public ModelRequest {
    List<String> keys = UsualLamps.of(kind).stream().map(UsualLamp::key).toList();
    if (!counts.keySet().asList().equals(keys)) {
      throw new IllegalArgumentException("counts: " + counts.keySet() + ": must be " + keys);
    }
    for (UsualLamp lamp : UsualLamps.of(kind)) {
      check(lamp, counts.getOrDefault(lamp.key(), 0));
    }
  }

  private static void check(UsualLamp lamp, int count) {
    if (count < 0 || count > lamp.greatest()) {
      throw new IllegalArgumentException(
          lamp.key() + ": " + count + ": must be between 0 and " + lamp.greatest());
    }
  }

  /** What such a model usually has, with the controller that is taken where none is named. */
  public static ModelRequest usual(ModelKind kind) {
    ImmutableMap.Builder<String, Integer> counts = ImmutableMap.builder();
    UsualLamps.of(kind).forEach(lamp -> counts.put(lamp.key(), lamp.count()));
    return new ModelRequest(
        kind,
        Models.title(kind),
        Controller.find(Target.DEFAULT).orElseThrow(),
        counts.buildOrThrow());
  }

  /** The group of lamps with this key. */
  public Optional<UsualLamp> group(String key) {
    return UsualLamps.of(kind).stream().filter(lamp -> lamp.key().equals(key)).findFirst();
  }

  /**
   * With so many lamps of a group.
   *
   * @throws IllegalArgumentException if such a model has no such group, or not so many places
   */
  public ModelRequest withCount(String key, int count) {
    Map<String, Integer> changed = new LinkedHashMap<>(counts);
    changed.put(key, count);
    return new ModelRequest(kind, name, controller, ImmutableMap.copyOf(changed));
  }

  public ModelRequest withName(String newName) {
    return new ModelRequest(kind, newName, controller, counts);
  }

  public ModelRequest withController(Controller newController) {
    return new ModelRequest(kind, name, newController, counts);
  }

  /** How many lamps there are in all. */
  public int lamps() {
    return counts.values().stream().mapToInt(Integer::intValue).sum();
  }
}
