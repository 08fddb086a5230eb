package lampwright.exporters.packed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.Progress;
import lampwright.exporters.TestJobs;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/** Every scene of the projects that come with the program, rendered as an export renders it. */
final class SampleTables {
  private static final Path SAMPLES = Path.of("..", "samples");

  private SampleTables() {}

  /** A scene's frame table. */
  static final class Sample {
    private final String name;
    private final ExportJob job;

    private Sample(String name, ExportJob job) {
      this.name = name;
      this.job = job;
    }

    /** The project's file and the scene's id. */
    String name() {
      return name;
    }

    ExportJob job() {
      return job;
    }

    byte[] bytes() {
      return TestJobs.table(job);
    }

    /** What the packed export writes. */
    byte[] packed() throws CancelledException {
      return ScenePacker.pack(
              "packed", List.of(job.table()), Target.slowestDecodeCost(), Progress.SILENT)
          .data();
    }
  }

  /** All of them, by file name and then in the project's order. */
  static List<Sample> all() throws IOException {
    List<Path> files;
    try (Stream<Path> found = Files.list(SAMPLES)) {
      files = found.filter(f -> f.toString().endsWith(".lampwright.json")).sorted().toList();
    }
    List<Sample> all = new ArrayList<>();
    for (Path file : files) {
      Project project = ProjectReader.read(file).project().orElseThrow();
      for (Scene scene : project.scenes()) {
        String name = file.getFileName().toString().replace(".lampwright.json", "");
        ExportJob job = ExportJob.of(project, scene, ExportOptions.DEFAULT);
        all.add(new Sample(name + " " + scene.id(), job));
      }
    }
    return all;
  }
}
