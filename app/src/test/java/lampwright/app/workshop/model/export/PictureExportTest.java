package lampwright.app.workshop.model.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.work.LatestWorker;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PictureExportTest {
  private static final Path SAMPLE = Path.of("..", "samples", "mountain-rescue.lampwright.json");

  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final DrawingSheet sheet = new DrawingSheet();
  private final LatestWorker worker =
      LatestWorker.named("pictures", screen::add, LatestWorker.Ending.ASK);
  private PictureExport export;

  @TempDir Path folder;

  @BeforeEach
  void open() throws Exception {
    Bench bench = new Bench(ProjectReader.read(SAMPLE).project().orElseThrow());
    export =
        new PictureExport(
            bench,
            sheet,
            new BackgroundFile(dialogs, worker, screen::add, () -> Optional.of(SAMPLE)));
  }

  @AfterEach
  void close() {
    worker.close();
  }

  private void make(Path file) throws InterruptedException {
    dialogs.files.add(file);
    export.make();
    Runnable next = screen.poll(5, TimeUnit.MINUTES);
    assertThat(next).isNotNull();
    next.run();
  }

  @Test
  void stillHasThePaletteThatIsShown() throws Exception {
    sheet.nightProperty().set(true);
    Path file = folder.resolve("rescue.PNG");
    make(file);
    BufferedImage image = ImageIO.read(file.toFile());
    // -lw-wash of palette-night.css.
    assertThat(new Color(image.getRGB(1, 1))).isEqualTo(new Color(0x0B1320));
    assertThat(dialogs.told).containsExactly("Picture of the model\n" + file + " is written.");
  }

  /** The first scene flashes on call-out: it is dimmed, and the builder hears of it. */
  @Test
  void movingPictureIsDimmedWhereItFlashesTooOften() throws Exception {
    Path file = folder.resolve("rescue");
    make(file);
    byte[] bytes = Files.readAllBytes(folder.resolve("rescue.gif"));
    assertThat(new String(bytes, 0, 6, StandardCharsets.US_ASCII)).isEqualTo("GIF89a");
    assertThat(dialogs.told).hasSize(1);
    assertThat(dialogs.told.get(0))
        .contains("rescue.gif is written.")
        .contains("dimmed", "the limit is 3 (W3C WCAG 2.2, 2.3.1)");
  }

  @Test
  void whatCannotBeWrittenIsSaid() throws Exception {
    Path blocked = Files.createFile(folder.resolve("file")).resolve("rescue.png");
    make(blocked);
    assertThat(dialogs.told.get(0)).contains(folder.resolve("file").toString());
    assertThat(Files.exists(blocked)).isFalse();
  }
}
