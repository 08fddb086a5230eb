package lampwright.app.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.FileNames;
import lampwright.exporters.Progress;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.target.TargetFindings;

/** The review that check, measure, export and the workshop share. */
public final class Reviews {
  /** With everything that the program knows of supplies, controllers and eyes. */
  public static final Review ALL = new Review(List.of(new TargetFindings(), new FileNames()));

  private Reviews() {}

  /**
   * What the project itself shows, gravest first, its scenes packed in the controller's memory
   * included.
   *
   * @param scenes those that are looked at
   * @param oneByOne bytes that they take packed one by one, if that is known
   * @param progress hears of the packing, which is done where they may be too large
   */
  public static List<Finding> ofProject(
      Project project, List<Scene> scenes, OptionalLong oneByOne, Progress progress)
      throws CancelledException {
    return ofProject(project, FirmwareMemory.known(project, scenes, oneByOne, progress));
  }

  /** The same for one who knows what the scenes are in the controller's memory. */
  public static List<Finding> ofProject(Project project, FirmwareMemory.Known memory) {
    List<Finding> found = new ArrayList<>(ALL.ofProject(project));
    found.addAll(memory.findings());
    return Review.sorted(found);
  }

  /**
   * All that the project, scenes of it and its situations together show, gravest first.
   *
   * @param reports what was measured, some of the project's scenes
   * @param progress as of {@link #ofProject}
   */
  public static List<Finding> of(Project project, List<SceneReport> reports, Progress progress)
      throws CancelledException {
    List<Scene> scenes = reports.stream().map(report -> report.table().scene()).toList();
    List<Finding> found =
        new ArrayList<>(ofProject(project, scenes, OptionalLong.empty(), progress));
    reports.forEach(report -> found.addAll(ALL.ofScene(project, report)));
    Review.measureShow(project).ifPresent(show -> found.addAll(Review.ofShow(project, show)));
    return Review.sorted(found);
  }
}
