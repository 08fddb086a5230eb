package lampwright.engine.document;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lampwright.engine.check.Checks;
import lampwright.engine.check.Fault;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** What can be wrong between the parts of a project. */
public final class ProjectFaults {
  private ProjectFaults() {}

  /** The faults between presets of one list, with paths such as {@code presets[1].name}. */
  public static List<Fault> ofPresets(List<Preset> presets) {
    return Checks.of("presets").unique("presets", "name", presets, Preset::name).faults();
  }

  /** The faults between these parts, with paths such as {@code scenes[0].tracks[1].lamps[0]}. */
  public static List<Fault> find(
      List<PixelType> pixelTypes,
      List<Chain> chains,
      List<Lamp> lamps,
      List<Picture> pictures,
      List<Scene> scenes) {
    Checks checks = Checks.of("project").uniqueIds("pixelTypes", pixelTypes, PixelType::id);
    for (int i = 0; i < pixelTypes.size(); i++) {
      if (BuiltInPixelTypes.ids().contains(pixelTypes.get(i).id())) {
        checks.add(
            "pixelTypes[" + i + "].id",
            pixelTypes.get(i).id(),
            "must differ from the ids of built-in pixel types");
      }
    }
    for (int i = 0; i < chains.size(); i++) {
      PixelType type = chains.get(i).type();
      checks.that(
          BuiltInPixelTypes.has(type) || pixelTypes.stream().anyMatch(type::isSame),
          "rig.chains[" + i + "].pixelType",
          type.id(),
          "must be a built-in pixel type or one of pixelTypes");
    }
    pictures(checks, pictures);
    checks.uniqueIds("scenes", scenes, Scene::id);
    Set<String> lampIds = lamps.stream().map(Lamp::id).collect(Collectors.toSet());
    for (int s = 0; s < scenes.size(); s++) {
      List<Track> tracks = scenes.get(s).tracks();
      for (int t = 0; t < tracks.size(); t++) {
        List<String> named = tracks.get(t).lamps();
        for (int l = 0; l < named.size(); l++) {
          if (!lampIds.contains(named.get(l))) {
            checks.add(
                "scenes[" + s + "].tracks[" + t + "].lamps[" + l + "]",
                named.get(l),
                "must be the id of a lamp of this rig");
          }
        }
      }
    }
    return checks.faults();
  }

  private static void pictures(Checks checks, List<Picture> pictures) {
    Map<View, Integer> first = new EnumMap<>(View.class);
    for (int i = 0; i < pictures.size(); i++) {
      View view = pictures.get(i).view();
      Integer earlier = first.putIfAbsent(view, i);
      if (earlier != null) {
        checks.add(
            "pictures[" + i + "].view",
            view.key(),
            "must be unique; pictures[" + earlier + "] has the same");
      }
    }
  }
}
