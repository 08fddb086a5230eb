package lampwright.exporters.firmware;

import java.util.List;
import java.util.OptionalInt;
import lampwright.engine.check.Fault;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;
import lampwright.exporters.target.TargetFindings;

/**
 * Whether the scenes of a project fit the controller that it names, packed as firmware holds them.
 */
public final class FirmwareMemory {
  /**
   * Packed data is at most a little longer than the tables; tables of half the room fit for sure.
   */
  private static final int SURE_SHARE = 2;

  private FirmwareMemory() {}

  /** Whether a rig names a controller whose program memory is known. */
  public static boolean isKnown(Rig rig) {
    return rig.controller().isPresent() && Target.of(rig).memory().freeFlashBytes().isPresent();
  }

  /**
   * Why they don't fit; empty if they do, or if nothing is known of the controller's memory. Packs
   * only what may be too large.
   *
   * @param scenes of the rig, together in its memory
   * @param progress hears of the packing
   */
  public static List<Finding> findings(Rig rig, List<Scene> scenes, Progress progress)
      throws CancelledException {
    if (!isKnown(rig) || scenes.isEmpty()) {
      return List.of();
    }
    Target target = Target.of(rig);
    OptionalInt free = target.memory().freeFlashBytes();
    List<FrameTable> tables = scenes.stream().map(scene -> FrameTable.of(rig, scene)).toList();
    List<Fault> faults = ScenePacker.faults(tables);
    if (!faults.isEmpty()) {
      return ExportFacts.refused("firmware", faults);
    }
    long raw = tables.stream().mapToLong(FrameTable::bytes).sum();
    if (raw <= (free.orElseThrow() - target.size(rig).programBytes()) / SURE_SHARE) {
      return List.of();
    }
    try {
      int packed = ScenePacker.pack("firmware", tables, target.decodeCost(), progress).size();
      return TargetFindings.programMemory(target, rig, packed).stream().toList();
    } catch (ExportRefusedException tooLong) {
      return tooLong.refusals();
    }
  }
}
