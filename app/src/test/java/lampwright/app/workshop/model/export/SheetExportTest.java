package lampwright.app.workshop.model.export;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.engine.work.LatestWorker;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetExportTest {
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final Bench bench = new Bench(Projects4Tests.small());
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final LatestWorker worker =
      LatestWorker.named("sheets", screen::add, LatestWorker.Ending.ASK);
  private final SheetExport export =
      new SheetExport(
          bench,
          new BackgroundFile(
              dialogs,
              worker,
              screen::add,
              () -> Optional.of(Path.of("yard", "tug.lampwright.json"))));

  @TempDir Path folder;

  @AfterEach
  void close() {
    worker.close();
  }

  private void build(Path file) throws InterruptedException {
    dialogs.files.add(file);
    export.build();
    Runnable next = screen.poll(5, TimeUnit.MINUTES);
    assertThat(next).isNotNull();
    next.run();
  }

  @Test
  void pdfIsWrittenAndTheBuilderHears() throws Exception {
    build(folder.resolve("tug.pdf"));
    assertThat(Files.readString(folder.resolve("tug.pdf"), ISO_8859_1)).startsWith("%PDF-");
    assertThat(dialogs.told)
        .containsExactly("Build sheet\n" + folder.resolve("tug.pdf") + " is written.");
  }

  @Test
  void htmlIsWrittenByItsName() throws Exception {
    build(folder.resolve("tug.html"));
    assertThat(Files.readString(folder.resolve("tug.html"))).startsWith("<!DOCTYPE html>");
  }

  @Test
  void anyOtherNameBecomesPdf() throws Exception {
    build(folder.resolve("tug"));
    assertThat(folder.resolve("tug.pdf")).isNotEmptyFile();
    assertThat(folder.resolve("tug")).doesNotExist();
  }

  @Test
  void whatCannotBeWrittenIsSaid() throws Exception {
    Path blocked = Files.createFile(folder.resolve("file")).resolve("tug.pdf");
    build(blocked);
    assertThat(dialogs.told).hasSize(1);
    assertThat(dialogs.told.get(0))
        .startsWith("Build sheet\n")
        .contains(folder.resolve("file").toString());
    assertThat(Files.exists(blocked)).isFalse();
  }
}
