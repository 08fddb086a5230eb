package lampwright.app.export;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import lampwright.engine.disk.FileSet;
import lampwright.engine.document.Project;
import lampwright.engine.review.Finding;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Exporter;
import lampwright.exporters.FileNames;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectExporter;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.Uf2Exporter;
import lampwright.exporters.firmware.Uf2ShowExporter;

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

  private record SceneFormat(ExportJob job, Exporter exporter) {
    ExportPart part() {
      List<Finding> names = FileNames.refusal(job.scene()).stream().toList();
      return new ExportPart(
          exporter.key(), Optional.of(job.scene().id()), exporter.facts(job).with(names));
    }
  }

  private final Path folder;
  private final List<SceneFormat> ofScenes;
  private final Optional<ProjectJob> firmware;

  /** What is written as one UF2 file with its situations. */
  private final Optional<ProjectJob> uf2;

  private ExportRun(
      Path folder,
      List<SceneFormat> ofScenes,
      Optional<ProjectJob> firmware,
      Optional<ProjectJob> uf2) {
    this.folder = folder;
    this.ofScenes = ofScenes;
    this.firmware = firmware;
    this.uf2 = uf2;
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
    Optional<ProjectJob> together = Optional.of(ProjectJob.of(project, scenes));
    boolean withUf2 = wanted.contains(Uf2Exporter.KEY);
    return new ExportRun(
        folder,
        List.copyOf(ofScenes),
        together.filter(job -> withFirmware),
        together.filter(job -> withUf2 && Uf2ShowExporter.isFor(job)));
  }

  private static Exporter exporter(String key) {
    return ExportFormats.ofOneScene(key)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "formats: " + key + ": must be " + String.join(", ", ExportFormats.keys())));
  }

  /** What belongs to one scene each, scene by scene, known without rendering. */
  public List<ExportPart> sceneParts() {
    return ofScenes.stream().map(SceneFormat::part).toList();
  }

  /** The folder for all scenes, if it is wanted, known without rendering. */
  public Optional<ExportPart> folderPart() {
    return firmware.map(job -> part(ExportFormats.FIRMWARE_EXPORTER, job));
  }

  private Optional<ExportPart> showPart() {
    return uf2.map(job -> part(ExportFormats.UF2_SHOW_EXPORTER, job));
  }

  private static ExportPart part(ProjectExporter exporter, ProjectJob job) {
    return new ExportPart(exporter.key(), Optional.empty(), exporter.facts(job));
  }

  /** The folder and the file of situations, if they are wanted, and what is of one scene each. */
  public List<ExportPart> parts() {
    return Stream.of(folderPart().stream(), showPart().stream(), sceneParts().stream())
        .flatMap(parts -> parts)
        .toList();
  }

  /** Where something named by {@link ExportPart#names} goes. */
  public Path place(String name) {
    return folder.resolve(name);
  }

  /**
   * Renders and writes all of it. Files are written beside and then exchanged as one set: a failure
   * leaves no half file and no changed file. In the firmware folder what the builder has changed
   * stays.
   *
   * @param written hears what is in its place now: the folder first, then the files of scenes
   * @return what only the work has shown, beside what the facts of the parts say beforehand
   * @throws ExportRefusedException if a format cannot hold a scene; nothing was changed
   * @throws IOException if something cannot be written
   * @throws CancelledException if the watcher ended it; nothing was changed
   */
  public List<Finding> write(Watcher watcher, Consumer<Path> written)
      throws IOException, CancelledException {
    parts().forEach(ExportRun::refuse);
    List<Finding> cautions = new ArrayList<>();
    try (FileSet files = FileSet.in(folder)) {
      for (SceneFormat each : ofScenes) {
        Progress progress = watcher.begins(each.part());
        cautions.addAll(each.exporter().export(each.job(), files::open, progress));
        watcher.ends();
      }
      if (uf2.isPresent()) {
        Progress progress = watcher.begins(showPart().orElseThrow());
        cautions.addAll(ExportFormats.UF2_SHOW_EXPORTER.export(uf2.get(), files::open, progress));
        watcher.ends();
      }
      if (firmware.isPresent()) {
        cautions.addAll(writeFolder(firmware.get(), files, watcher));
      }
      files.commit();
    }
    for (ExportPart part : parts()) {
      part.names().forEach(name -> written.accept(place(name)));
    }
    return cautions;
  }

  private List<Finding> writeFolder(ProjectJob job, FileSet set, Watcher watcher)
      throws IOException, CancelledException {
    ExportPart part = part(ExportFormats.FIRMWARE_EXPORTER, job);
    FirmwareFolder written = FirmwareFolder.in(folder, part.format());
    Map<String, ByteArrayOutputStream> files = new LinkedHashMap<>();
    List<Finding> cautions =
        new ArrayList<>(
            ExportFormats.FIRMWARE_EXPORTER.export(
                job,
                name -> files.computeIfAbsent(name, made -> new ByteArrayOutputStream()),
                watcher.begins(part)));
    Map<String, byte[]> contents = new LinkedHashMap<>();
    files.forEach((name, bytes) -> contents.put(name, bytes.toByteArray()));
    cautions.addAll(written.write(contents, set));
    watcher.ends();
    return cautions;
  }

  private static void refuse(ExportPart part) {
    ExportRefusedException.throwIfAny(part.format(), part.scene(), part.facts().refusals());
  }
}
