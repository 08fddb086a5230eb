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

  /**
   * Bytes of a frame table from which on it is not packed where a bound will do: packing takes a
   * second per megabyte or so.
   */
  public static final long LARGE = 4L << 20;

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
   * What is known of scenes in the controller's memory.
   *
   * @param findings why they don't fit; empty if they do, or if nothing is known of the memory
   * @param taken what they take with the situations; none if there are none among these scenes, if
   *     nothing is known of the controller's memory, or if they can't be packed
   */
  public record Known(List<Finding> findings, Optional<Taken> taken) {
    public Known {
      findings = List.copyOf(findings);
    }

    private static Known of(List<Finding> findings) {
      return new Known(findings, Optional.empty());
    }
  }

  /** Why firmware with this data fits neither program nor working memory; empty if it fits both. */
  public static List<Finding> refusals(Target target, ProjectJob job, byte[] packed) {
    return refusals(target, job.project().rig(), packed.length, room(target, job, packed));
  }

  private static List<Finding> refusals(
      Target target, Rig rig, int packedBytes, Optional<ShowRoom> room) {
    List<Finding> found =
        new ArrayList<>(
            TargetFindings.programMemory(target, rig, packedBytes, room.isPresent()).stream()
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
    return known(project, scenes, OptionalLong.empty(), progress).findings();
  }

  /**
   * The same, with what they take, for one who has packed the scenes. Packs them together once at
   * most, and not at all where what is known of them answers it.
   *
   * @param oneByOne bytes that the scenes take packed one by one, if that is known
   */
  public static Known known(
      Project project, List<Scene> scenes, OptionalLong oneByOne, Progress progress)
      throws CancelledException {
    Rig rig = project.rig();
    if (!isKnown(rig) || scenes.isEmpty()) {
      return Known.of(List.of());
    }
    Target target = Target.of(rig);
    OptionalInt free = target.memory().freeFlashBytes();
    ProjectJob job = ProjectJob.of(project, scenes);
    List<FrameTable> tables = job.tables();
    Optional<Show> show = job.show();
    List<Fault> faults = ScenePacker.faults(tables);
    if (!faults.isEmpty()) {
      return Known.of(ExportFacts.refused("firmware", faults));
    }
    long raw = tables.stream().mapToLong(FrameTable::bytes).sum();
    long most = Math.min(raw, oneByOne.orElse(raw));
    int code = TargetFindings.programBytes(target, rig, show.isPresent());
    // What situations take beside the frames is small, but not nothing.
    if (show.isEmpty() && most <= (free.orElseThrow() - code) / SURE_SHARE) {
      return Known.of(List.of());
    }
    if (raw > LARGE && target.size(rig).ramRefusal().isPresent()) {
      // It is refused for the rig alone, whatever the scenes take.
      return Known.of(List.of());
    }
    if (show.isEmpty() && scenes.size() == 1 && oneByOne.isPresent()) {
      // The data of one scene is the same in every export (decision 21).
      int bytes = Math.toIntExact(oneByOne.getAsLong());
      return Known.of(refusals(target, rig, bytes, Optional.empty()));
    }
    try {
      byte[] packed =
          ScenePacker.pack("firmware", tables, show, target.decodeCost(), progress).data();
      List<Finding> refusals = refusals(target, job, packed);
      return new Known(refusals, show.map(playing -> taken(target, job, packed)));
    } catch (ExportRefusedException tooLong) {
      return Known.of(tooLong.refusals());
    }
  }

  private static Taken taken(Target target, ProjectJob job, byte[] packed) {
    Rig rig = job.project().rig();
    return new Taken(
        packed.length + TargetFindings.programBytes(target, rig, true),
        target.size(rig, room(target, job, packed)).ramBytes());
  }
}
