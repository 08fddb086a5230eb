package lampwright.app.workshop.model.export;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.Consumer;
import lampwright.app.export.ExportPart;
import lampwright.app.export.ExportRun;
import lampwright.app.review.Reviews;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.Packed;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/**
 * Finds out what an export will write: at once what is known without rendering, then scene by scene
 * what is measured. For a thread of the background; keeps what it measured of a project.
 */
final class Previewer {
  private record Measured(OptionalLong packedBytes, List<Finding> findings) {}

  private final Texts texts = Texts.of("export");
  private final Project project;
  private final List<Finding> ofProject;
  private final Map<String, Measured> measured = new LinkedHashMap<>();

  Previewer(Project project) {
    this.project = project;
    this.ofProject = Reviews.ALL.ofProject(project);
  }

  /**
   * Finds it out.
   *
   * @param run none if nothing can be run, such as without a folder; sizes are found all the same
   * @param progress may end it
   * @param found hears each better preview, the last one complete
   */
  void find(
      List<Scene> scenes,
      Optional<ExportRun> run,
      List<String> faults,
      Progress progress,
      Consumer<ExportPreview> found)
      throws CancelledException {
    found.accept(preview(scenes, run, faults, false));
    for (Scene scene : scenes) {
      if (!measured.containsKey(scene.id())) {
        measured.put(scene.id(), measure(FrameTable.of(project.rig(), scene), progress));
        found.accept(preview(scenes, run, faults, false));
      }
    }
    found.accept(preview(scenes, run, faults, true));
  }

  private Measured measure(FrameTable table, Progress progress) throws CancelledException {
    progress.frames(0, 1);
    Optional<Packed> packed = packed(table, progress);
    progress.frames(0, 1);
    List<Finding> findings = new ArrayList<>();
    packed.ifPresent(p -> findings.addAll(ScenePacker.findings(p)));
    findings.addAll(Reviews.ALL.ofScene(project, SceneReport.of(table)));
    return new Measured(
        packed.map(p -> OptionalLong.of(p.size())).orElse(OptionalLong.empty()), findings);
  }

  private static Optional<Packed> packed(FrameTable table, Progress progress)
      throws CancelledException {
    List<FrameTable> alone = List.of(table);
    if (!ScenePacker.faults(alone).isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(ScenePacker.pack("packed", alone, Target.slowestDecodeCost(), progress));
    } catch (ExportRefusedException tooLong) {
      return Optional.empty();
    }
  }

  private ExportPreview preview(
      List<Scene> scenes, Optional<ExportRun> run, List<String> faults, boolean complete) {
    List<ExportPreview.Size> sizes = new ArrayList<>();
    List<Finding> findings = new ArrayList<>(ofProject);
    for (Scene scene : scenes) {
      sizes.add(size(scene));
      Optional.ofNullable(measured.get(scene.id())).ifPresent(m -> findings.addAll(m.findings()));
    }
    List<ExportPreview.Place> places = new ArrayList<>();
    List<String> refusals = new ArrayList<>(faults);
    for (ExportPart part : run.map(ExportRun::parts).orElse(List.of())) {
      findings.addAll(part.facts().findings());
      part.facts()
          .refusals()
          .forEach(
              refusal ->
                  refusals.add(
                      texts.get(
                          "refused",
                          part.scene().map(id -> id + " · ").orElse("") + part.format(),
                          refusal.text())));
      for (String name : part.names()) {
        var path = run.orElseThrow().place(name);
        places.add(new ExportPreview.Place(path, Files.exists(path)));
      }
    }
    return new ExportPreview(sizes, places, Review.sorted(findings), refusals, complete);
  }

  private ExportPreview.Size size(Scene scene) {
    long raw = FrameTable.of(project.rig(), scene).bytes();
    OptionalLong packed =
        Optional.ofNullable(measured.get(scene.id()))
            .map(Measured::packedBytes)
            .orElse(OptionalLong.empty());
    OptionalInt flash =
        project.rig().controller().isPresent()
            ? Target.of(project.rig()).memory().freeFlashBytes()
            : OptionalInt.empty();
    return new ExportPreview.Size(
        scene.id(), raw, packed, share(OptionalLong.of(raw), flash), share(packed, flash));
  }

  private static OptionalDouble share(OptionalLong bytes, OptionalInt flash) {
    return bytes.isPresent() && flash.isPresent()
        ? OptionalDouble.of((double) bytes.getAsLong() / flash.getAsInt())
        : OptionalDouble.empty();
  }
}
