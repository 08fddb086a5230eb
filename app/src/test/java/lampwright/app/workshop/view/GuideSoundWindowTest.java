package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.sound.Wav;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectWriter;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** The guide sound in the real window; machines that run tests have no sound device. */
@ExtendWith(ApplicationExtension.class)
class GuideSoundWindowTest {
  @TempDir static Path folder;

  private WorkshopWindow window;

  @Start
  void start(Stage stage) throws IOException {
    Wav.write(folder.resolve("guide.wav"));
    Path file =
        Files.writeString(folder.resolve("p.lampwright.json"), ProjectWriter.write(withSound()));
    window = TestWindow.open(stage, folder, Optional.of(file));
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private static Project withSound() {
    Project small = Projects4Tests.small();
    return Project.SCENES.with(
        small,
        small.scenes().stream()
            .map(s -> Scene.GUIDE_SOUND.with(s, Optional.of(GuideSound.of("guide.wav"))))
            .toList());
  }

  private GuideSound sound() {
    return window.parts().guide().track().sound().orElseThrow();
  }

  @Test
  void waveformIsDraggedMutedAndTakenOut(FxRobot robot) throws Exception {
    TestWindow.await(() -> window.parts().guide().track().clip().isPresent());
    Node guide = robot.lookup("#guide-sound").query();
    assertThat(guide.isVisible()).isTrue();
    assertThat(guide.getAccessibleText()).contains("guide.wav").contains("starts at 0 s");
    Node wave = guide.lookupAll("Canvas").stream().skip(1).findFirst().orElseThrow();
    robot.drag(wave, MouseButton.PRIMARY).moveBy(80, 0).drop();
    BigDecimal started = sound().startMs();
    assertThat(started).isPositive();
    robot.interact(() -> window.ribbons().requestFocus());
    robot.type(KeyCode.G);
    assertThat(window.parts().guide().state()).isEqualTo("muted");
    robot.type(KeyCode.G);
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(sound().startMs()).isZero();
    robot.interact(() -> window.commands().find("sound.act.remove").run().run());
    TestWindow.await(() -> !guide.isVisible());
  }

  @Test
  void playingGoesOnWithoutASoundDevice(FxRobot robot) throws Exception {
    TestWindow.await(() -> window.parts().guide().track().clip().isPresent());
    // A dark scene: play asks nothing.
    Bench bench = window.parts().bench();
    robot.interact(() -> bench.select(bench.selection().withScene("rest")));
    robot.interact(() -> window.parts().player().play());
    TestWindow.await(() -> window.parts().playhead().frame() > 5);
    robot.interact(() -> window.parts().player().pause());
    String state = window.parts().guide().state();
    assertThat(state).isIn("no sound device", "1.00\u00a0s");
  }

  @Test
  void exportsAreTheSameWithAndWithoutIt() throws Exception {
    Path with = Files.createTempDirectory(folder, "with");
    Path without = Files.createTempDirectory(folder, "without");
    List<String> formats = List.of("c", "bin", "packed", "hex", "csv");
    TestWindow.export(withSound(), formats, with);
    TestWindow.export(Projects4Tests.small(), formats, without);
    List<Path> files;
    try (Stream<Path> all = Files.walk(with)) {
      files = all.filter(Files::isRegularFile).toList();
    }
    assertThat(files).hasSizeGreaterThan(5);
    for (Path file : files) {
      assertThat(without.resolve(with.relativize(file))).hasSameBinaryContentAs(file);
    }
    assertThat(files.stream().map(f -> f.getFileName().toString()))
        .noneMatch(n -> n.endsWith("wav"));
  }
}
