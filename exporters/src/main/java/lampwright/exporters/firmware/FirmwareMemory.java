package lampwright.exporters.firmware;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import lampwright.engine.check.Fault;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Show;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.packed.play.ShowRoom;
import lampwright.exporters.target.Target;
import lampwright.exporters.target.TargetFindings;

/**
 * Whether the scenes of a project fit the controller that it names, packed as firmware holds them.
 */
public final class FirmwareMemory {
  /**
   * Packed data is at most a little longer than the tables, and scenes packed together take at most
   * some 1.6 times what they take one by one: a third more where the controller is given quicker
   * code, a quarter where places are wider. Half the room holds either for sure.
   */
  private static final int SURE_SHARE = 2;

  private FirmwareMemory() {}

  /** Whether a rig names a controller whose program memory is known. */
  public static boolean isKnown(Rig rig) {
    return rig.controller().isPresent() && Target.of(rig).memory().freeFlashBytes().isPresent();
  }

  /** Room for the situations that firmware with this data plays; none if it plays none. */
  static Optional<ShowRoom> room(Target target, ProjectJob job, byte[] packed) {
    return job.show().map(show -> ShowRoom.of(packed));
  }

  /**
   * What firmware takes that plays all scenes of a project and its situations.
   *
   * @param programBytes of data, player and driver
   * @param ramBytes of frame, player, situations and stack
   */
  public record Taken(int programBytes, int ramBytes) {}

  /**
   * What firmware with the situations takes; none if there are none among these scenes, if nothing
   * is known of the controller's memory, or if they can't be packed.
   *
   * @param progress hears of the packing
   */
  public static Optional<Taken> taken(Project project, List<Scene> scenes, Progress progress)
      throws CancelledException {
    Rig rig = project.rig();
    ProjectJob job = ProjectJob.of(project, scenes);
    Optional<Show> show = job.show();
    if (!isKnown(rig) || show.isEmpty() || !ScenePacker.faults(job.tables()).isEmpty()) {
      return Optional.empty();
    }
    Target target = Target.of(rig);
    try {
      byte[] packed =
          ScenePacker.pack("firmware", job.tables(), show, target.decodeCost(), progress).data();
      return Optional.of(
          new Taken(
              packed.length + TargetFindings.programBytes(target, rig, true),
              target.size(rig, room(target, job, packed)).ramBytes()));
    } catch (ExportRefusedException tooLong) {
      return Optional.empty();
    }
  }

  /** Why firmware with this data fits neither program nor working memory; empty if it fits both. */
  public static List<Finding> refusals(Target target, ProjectJob job, byte[] packed) {
    Rig rig = job.project().rig();
    Optional<ShowRoom> room = room(target, job, packed);
    List<Finding> found =
        new ArrayList<>(
            TargetFindings.programMemory(target, rig, packed.length, room.isPresent()).stream()
                .toList());
    // Without situations it is refused for the rig alone.
    if (target.size(rig).ramRefusal().isEmpty()) {
      target.size(rig, room).ramRefusal().ifPresent(found::add);
    }
    return found;
  }

  /**
   * Why they don't fit; empty if they do, or if nothing is known of the controller's memory. Packs
   * only what may be too large.
   *
   * @param scenes of the project, together in the controller's memory
   * @param progress hears of the packing
   */
  public static List<Finding> findings(Project project, List<Scene> scenes, Progress progress)
      throws CancelledException {
    return findings(project, scenes, OptionalLong.empty(), progress);
  }

  /**
   * The same for one who has packed the scenes.
   *
   * @param oneByOne bytes that the scenes take packed one by one, if that is known
   */
  public static List<Finding> findings(
      Project project, List<Scene> scenes, OptionalLong oneByOne, Progress progress)
      throws CancelledException {
    Rig rig = project.rig();
    if (!isKnown(rig) || scenes.isEmpty()) {
      return List.of();
    }
    Target target = Target.of(rig);
    OptionalInt free = target.memory().freeFlashBytes();
    ProjectJob job = ProjectJob.of(project, scenes);
    List<FrameTable> tables = job.tables();
    Optional<Show> show = job.show();
    List<Fault> faults = ScenePacker.faults(tables);
    if (!faults.isEmpty()) {
      return ExportFacts.refused("firmware", faults);
    }
    long raw = tables.stream().mapToLong(FrameTable::bytes).sum();
    long most = Math.min(raw, oneByOne.orElse(raw));
    int code = TargetFindings.programBytes(target, rig, show.isPresent());
    // What situations take beside the frames is small, but not nothing.
    if (show.isEmpty() && most <= (free.orElseThrow() - code) / SURE_SHARE) {
      return List.of();
    }
    try {
      return refusals(
          target,
          job,
          ScenePacker.pack("firmware", tables, show, target.decodeCost(), progress).data());
    } catch (ExportRefusedException tooLong) {
      return tooLong.refusals();
    }
  }
}
