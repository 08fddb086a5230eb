package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.document.Preset;
import lampwright.engine.document.Project;

/** What is done to a list of presets, be it a project's or the user's. */
public final class PresetEdits {
  private PresetEdits() {}

  /** Puts a preset in the place of the one of its name, or last. */
  public static List<Preset> save(List<Preset> presets, Preset preset) {
    List<Preset> changed = new ArrayList<>(presets);
    int at = index(presets, preset.name());
    if (at >= 0) {
      changed.set(at, preset);
    } else {
      changed.add(preset);
    }
    return changed;
  }

  /**
   * Gives a preset another name; nothing changes where there is none of the old one.
   *
   * @throws lampwright.engine.check.InvalidModelException if the name is not accepted
   */
  public static List<Preset> rename(List<Preset> presets, String from, String to) {
    return presets.stream()
        .map(preset -> preset.name().equals(from) ? Preset.NAME.with(preset, to) : preset)
        .toList();
  }

  /** Takes a preset away. */
  public static List<Preset> remove(List<Preset> presets, String name) {
    return presets.stream().filter(preset -> !preset.name().equals(name)).toList();
  }

  /** The same in a project. */
  public static Project in(Project project, List<Preset> presets) {
    return Project.PRESETS.with(project, presets);
  }

  private static int index(List<Preset> presets, String name) {
    return presets.stream().map(Preset::name).toList().indexOf(name);
  }
}
