package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import lampwright.engine.document.Picture;
import lampwright.engine.document.Project;
import lampwright.engine.field.Shape;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/**
 * Arbitrary valid projects, with all there is: patterns, blends, spans, feels, dithers and pixel
 * types of their own. Kept small: at most two scenes of two seconds with three tracks. Made by hand
 * from one source of chance, because building them from small arbitraries takes a thousand times as
 * long; so they do not shrink.
 */
public final class ProjectArbitraries {
  private final Chance chance;
  private final boolean matched;

  private ProjectArbitraries(Random random, boolean matched) {
    this.chance = new Chance(random);
    this.matched = matched;
  }

  /** Any valid project. */
  public static Arbitrary<Project> projects() {
    return Arbitraries.randomValue(random -> new ProjectArbitraries(random, true).project());
  }

  /**
   * Projects in direct colour without a current cap: no tint, no kelvin or signal colours, no
   * matching to emitters.
   */
  public static Arbitrary<Project> directProjects() {
    return Arbitraries.randomValue(random -> new ProjectArbitraries(random, false).project());
  }

  private Project project() {
    RigChance rigs = new RigChance(chance, matched);
    List<PixelType> types = rigs.pixelTypes();
    Rig rig = rigs.rig(types);
    List<String> lamps = rig.lamps().stream().map(Lamp::id).toList();
    List<Scene> scenes = chance.distinct(2, () -> scene(lamps), Scene::id);
    return new Project(Optional.empty(), chance.text(), types, rig, pictures(), scenes);
  }

  private List<Picture> pictures() {
    return chance.distinct(
        2,
        () ->
            new Picture(
                chance.of(View.values()), chance.of("a.png", "photos/side view.JPG", "ü/1.jpeg")),
        p -> p.view().key());
  }

  private Scene scene(List<String> lamps) {
    return new Scene(
        chance.id("s"),
        chance.decimal("1", "2000"),
        chance.decimal("1", "60"),
        chance.flag(),
        chance.of(Dither.values()),
        chance.list(0, lamps.isEmpty() ? 0 : 3, () -> track(lamps)));
  }

  private Track track(List<String> lamps) {
    List<String> some = chance.shuffled(lamps).subList(0, chance.whole(1, lamps.size()));
    return new Track(some, chance.of(Span.values()), chance.list(0, 3, this::cue));
  }

  private Cue cue() {
    return new Cue(
        chance.decimal("0", "2000"),
        chance.decimal("1", "2500"),
        fade(),
        fade(),
        chance.of(Blend.values()),
        new RandomValues(chance, this::allowed).value(Patterns.ANY));
  }

  private BigDecimal fade() {
    return chance.flag() ? BigDecimal.ZERO : chance.decimal("0", "500");
  }

  // A tint is mixed by chromaticity, and so are these colours.
  private boolean allowed(Shape<?> shape) {
    return matched || !List.of("tint", "kelvin", "signal").contains(shape.key());
  }
}
