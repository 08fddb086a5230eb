package lampwright.engine.json;

import java.util.List;
import java.util.Random;
import lampwright.engine.document.Picture;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Scene;
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

  /** A valid project, the same one for the same seed. */
  public static Project project(long seed) {
    return new ProjectArbitraries(new Random(seed), true).project();
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
    return values()
        .with(Project.PIXEL_TYPES, () -> types)
        .with(Project.RIG, () -> rig)
        .with(Project.PICTURES, this::pictures)
        .with(Project.SCENES, () -> scenes)
        .with(
            Project.SITUATIONS,
            () ->
                new SituationChance(chance, rig.inputs(), scenes.stream().map(Scene::id).toList())
                    .situations())
        .record(Project.SHAPE);
  }

  // A tint is mixed by chromaticity, and so are these colours.
  private RandomValues values() {
    return new RandomValues(
        chance, shape -> matched || !List.of("tint", "kelvin", "signal").contains(shape.key()));
  }

  private List<Picture> pictures() {
    return chance.distinct(
        2,
        () ->
            values()
                .with(Picture.FILE, () -> chance.of("a.png", "photos/side view.JPG", "ü/1.jpeg"))
                .record(Picture.SHAPE),
        p -> p.view().key());
  }

  private Scene scene(List<String> lamps) {
    return values()
        .with(Scene.ID, () -> chance.id("s"))
        .with(GuideSound.FILE, () -> chance.of("a.wav", "sounds/horn 2.AIF", "ü/1.aiff"))
        .with(Scene.LENGTH_MS, () -> chance.decimal("1", "2000"))
        .with(Scene.FRAMES_PER_SECOND, () -> chance.decimal("1", "60"))
        .with(Scene.TRACKS, () -> chance.list(0, lamps.isEmpty() ? 0 : 3, () -> track(lamps)))
        .record(Scene.SHAPE);
  }

  private Track track(List<String> lamps) {
    List<String> some = chance.shuffled(lamps).subList(0, chance.whole(1, lamps.size()));
    return values()
        .with(Track.LAMPS, () -> some)
        .with(Track.CUES, () -> chance.list(0, 3, this::cue))
        .record(Track.SHAPE);
  }

  private Cue cue() {
    return values()
        .with(Cue.START_MS, () -> chance.decimal("0", "2000"))
        .with(Cue.LENGTH_MS, () -> chance.decimal("1", "2500"))
        .sometimes(Cue.FADE_IN_MS, () -> chance.decimal("0", "500"))
        .sometimes(Cue.FADE_OUT_MS, () -> chance.decimal("0", "500"))
        .record(Cue.SHAPE);
  }
}
