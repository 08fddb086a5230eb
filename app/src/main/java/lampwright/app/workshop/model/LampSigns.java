package lampwright.app.workshop.model;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * What the builder has set aside while working, by ids of lamps. It is the workshop's: neither the
 * project nor an export knows of it.
 *
 * @param muted not shown
 * @param solo if there are any, only they are shown
 * @param locked whose cues can't be edited
 */
public record LampSigns(
    ImmutableSet<String> muted, ImmutableSet<String> solo, ImmutableSet<String> locked) {
  /** All are shown, and none is locked. */
  public static final LampSigns NONE =
      new LampSigns(ImmutableSet.of(), ImmutableSet.of(), ImmutableSet.of());

  /** The signs of a lamp, from the left. */
  public enum Sign {
    LOCK,
    MUTE,
    SOLO
  }

  /** Whether a lamp has a sign. */
  public boolean has(Sign sign, String lamp) {
    return of(sign).contains(lamp);
  }

  /** Whether a lamp's light is shown. */
  public boolean shows(String lamp) {
    return !muted.contains(lamp) && (solo.isEmpty() || solo.contains(lamp));
  }

  /** With a sign on these lamps; without it if all of them have it. */
  public LampSigns toggled(Sign sign, Collection<String> lamps) {
    Set<String> changed = new HashSet<>(of(sign));
    if (!changed.removeAll(lamps) || !of(sign).containsAll(lamps)) {
      changed.addAll(lamps);
    }
    ImmutableSet<String> now = ImmutableSet.copyOf(changed);
    return switch (sign) {
      case MUTE -> new LampSigns(now, solo, locked);
      case SOLO -> new LampSigns(muted, now, locked);
      case LOCK -> new LampSigns(muted, solo, now);
    };
  }

  /** With all lamps shown again. */
  public LampSigns allShown() {
    return new LampSigns(ImmutableSet.of(), ImmutableSet.of(), locked);
  }

  /** How many lamps of a project are not shown. */
  public int hidden(Project project) {
    return (int) project.rig().lamps().stream().filter(lamp -> !shows(lamp.id())).count();
  }

  /** Why a project may not become another one: a locked lamp's cues would change. */
  public Optional<String> refuses(Project before, Project after) {
    for (Lamp lamp : before.rig().lamps()) {
      if (locked.contains(lamp.id()) && !tracks(before, lamp).equals(tracks(after, lamp))) {
        return Optional.of(Texts.of("ribbons").get("locked", Titles.of(lamp)));
      }
    }
    return Optional.empty();
  }

  private static List<List<Track>> tracks(Project project, Lamp lamp) {
    return project.scenes().stream()
        .map(Scene::tracks)
        .map(all -> all.stream().filter(t -> t.lamps().contains(lamp.id())).toList())
        .filter(driven -> !driven.isEmpty())
        .toList();
  }

  private ImmutableSet<String> of(Sign sign) {
    return switch (sign) {
      case MUTE -> muted;
      case SOLO -> solo;
      case LOCK -> locked;
    };
  }
}
