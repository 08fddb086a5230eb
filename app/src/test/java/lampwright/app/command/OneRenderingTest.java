package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.render.FrameTable;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * However many there are who want the frames of a scene, a command renders each of them once:
 * review, meters, packing and formats share one rendering. A count, since a time says more about
 * the machine. No frame of these samples has to be worked out a second time, exactly; none is
 * dithered, which is measured beside the light that is meant; and where one factor caps a scene,
 * the frames of the factor that was tried last are those of the table.
 */
@Isolated("counts what the whole process renders")
class OneRenderingTest {
  private static final String[] SAMPLES = {"recovery-tractor", "harbour-dusk", "bench-rgbw"};

  @TempDir Path folder;

  @Test
  void checkRendersEachFrameOnce() throws IOException {
    for (String name : SAMPLES) {
      assertRendersOnce(name, "check", sample(name));
    }
  }

  @Test
  void measureRendersEachFrameOnce() throws IOException {
    for (String name : SAMPLES) {
      assertRendersOnce(name, "measure", sample(name));
    }
  }

  @Test
  void exportInAllFormatsRendersEachFrameOnce() throws IOException {
    for (String name : SAMPLES) {
      assertRendersOnce(
          name,
          "export",
          sample(name),
          "--to",
          folder.resolve(name),
          "--as",
          "c,bin,packed,hex,csv,firmware");
    }
  }

  private static void assertRendersOnce(String name, Object... words) throws IOException {
    Project project = ProjectReader.read(sample(name)).project().orElseThrow();
    long frames = project.scenes().stream().mapToLong(Scene::frameCount).sum();
    long before = FrameTable.framesRendered();
    Run run = Run.of(words);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(FrameTable.framesRendered() - before).as("%s %s", words[0], name).isEqualTo(frames);
  }
}
