package lampwright.app.export;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import lampwright.engine.project.Project;
import lampwright.engine.project.StagedFiles;
import lampwright.engine.project.StagedFolder;
import lampwright.engine.review.Finding;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Exporter;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareExporter;

/** Scenes of a project in some formats into one folder. Immutable; nothing is kept between runs. */
public final class ExportRun {
  /** Hears how far it has come. */
  public interface Watcher {
    /**
     * A part begins.
     *
     * @param part which
     * @return hears its frames; may end the run
     */
    Progress begins(ExportPart part);

    /** The part begun last is whole. */
    void ends();
  }

  // What the firmware folder holds with another controller, and what its Makefile makes.
  private static final List<String> ALSO_FIRMWARE =
      List.of("Makefile", "main.c", "show.elf", "show.hex");

  private record SceneFormat(ExportJob job, Exporter exporter) {
    ExportPart part() {
      return new ExportPart(exporter.key(), Optional.of(job.scene().id()), exporter.facts(job));
    }
  }

  private final Path folder;
  private final List<SceneFormat> ofScenes;
  private final Optional<ProjectJob> firmware;

  private ExportRun(Path folder, List<SceneFormat> ofScenes, Optional<ProjectJob> firmware) {
    this.folder = folder;
    this.ofScenes = ofScenes;
    this.firmware = firmware;
  }

  /**
   * A run.
   *
   * @param scenes some of the project's scenes
   * @param formats keys of {@link ExportFormats}; one that is named twice is written once
   * @param folder made if it is missing
   * @throws IllegalArgumentException if a format is unknown, or a scene not of the project
   */
  public static ExportRun of(
      Project project,
      List<Scene> scenes,
      Collection<String> formats,
      ExportOptions options,
      Path folder) {
    Set<String> wanted = new LinkedHashSet<>(formats);
    boolean withFirmware = wanted.remove(ExportFormats.FIRMWARE);
    List<Exporter> exporters = wanted.stream().map(ExportRun::exporter).toList();
    List<SceneFormat> ofScenes = new ArrayList<>();
    for (Scene scene : scenes) {
      ExportJob job = ExportJob.of(project, scene, options);
      exporters.forEach(exporter -> ofScenes.add(new SceneFormat(job, exporter)));
    }
    return new ExportRun(
        folder,
        List.copyOf(ofScenes),
        withFirmware ? Optional.of(ProjectJob.of(project, scenes)) : Optional.empty());
  }

  private static Exporter exporter(String key) {
    return ExportFormats.ofOneScene(key)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "formats: " + key + ": needs " + String.join(", ", ExportFormats.keys())));
  }

  /** What belongs to one scene each, scene by scene, known without rendering. */
  public List<ExportPart> sceneParts() {
    return ofScenes.stream().map(SceneFormat::part).toList();
  }

  /** The folder for all scenes, if it is wanted, known without rendering. */
  public Optional<ExportPart> folderPart() {
    return firmware.map(ExportRun::part);
  }

  private static ExportPart part(ProjectJob job) {
    return new ExportPart(
        ExportFormats.FIRMWARE, Optional.empty(), ExportFormats.FIRMWARE_EXPORTER.facts(job));
  }

  /** The folder, if it is wanted, and what belongs to one scene each. */
  public List<ExportPart> parts() {
    return Stream.concat(folderPart().stream(), sceneParts().stream()).toList();
  }

  /** Where something named by {@link ExportPart#names} goes. */
  public Path place(String name) {
    return folder.resolve(name);
  }

  /**
   * Renders and writes all of it. Files are written beside and then moved into place: a failure
   * leaves no half file and no changed file.
   *
   * @param written hears what stands in its place now: the folder first, then the files of scenes
   * @return what only the work has shown, beside what the facts of the parts say beforehand
   * @throws ExportRefusedException if a format cannot hold a scene; nothing was changed
   * @throws IOException if something cannot be written
   * @throws CancelledException if the watcher ended it; nothing was changed
   */
  public List<Finding> write(Watcher watcher, Consumer<Path> written)
      throws IOException, CancelledException {
    List<Finding> cautions = new ArrayList<>();
    try (StagedFiles files = StagedFiles.in(folder)) {
      for (SceneFormat each : ofScenes) {
        ExportPart part = each.part();
        refuse(part);
        cautions.addAll(each.exporter().export(each.job(), files::open, watcher.begins(part)));
        watcher.ends();
      }
      // All else is whole by now, so that a failure leaves the folder as it was too.
      if (firmware.isPresent()) {
        cautions.addAll(writeFolder(firmware.get(), watcher));
        written.accept(place(ExportFormats.FIRMWARE));
      }
      files.commit();
    }
    for (ExportPart part : sceneParts()) {
      part.names().forEach(name -> written.accept(place(name)));
    }
    return cautions;
  }

  private List<Finding> writeFolder(ProjectJob job, Watcher watcher)
      throws IOException, CancelledException {
    ExportPart part = part(job);
    List<String> ours = new ArrayList<>(part.facts().files());
    ours.addAll(ALSO_FIRMWARE);
    try (StagedFolder files =
        StagedFolder.in(
            folder, part.format(), FirmwareExporter.MARK_FILE, FirmwareExporter.MARK_LINE, ours)) {
      List<Finding> cautions =
          ExportFormats.FIRMWARE_EXPORTER.export(job, files::open, watcher.begins(part));
      files.commit();
      watcher.ends();
      return cautions;
    }
  }

  private static void refuse(ExportPart part) {
    ExportFacts facts = part.facts();
    if (!facts.refusals().isEmpty()) {
      throw new ExportRefusedException(part.format(), part.scene(), facts.refusals());
    }
  }
}
