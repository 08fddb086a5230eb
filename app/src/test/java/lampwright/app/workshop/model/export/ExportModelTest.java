package lampwright.app.workshop.model.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.app.export.ExportFormats;
import lampwright.app.workshop.Samples;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.files.Turns;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.work.LatestWorker;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExportModelTest {
  @TempDir Path folder;
  private final Turns turns = new Turns();
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private ExportModel model;

  @BeforeEach
  void sample() {
    make(Samples.named("recovery-tractor"), Optional.of("working"));
  }

  private void make(Project project, Optional<String> first) {
    make(project, first, ExportWishes.FIRST.in(folder.resolve("out")));
  }

  private void make(Project project, Optional<String> first, ExportWishes wishes) {
    model =
        new ExportModel(
            project,
            first,
            wishes,
            dialogs,
            new LatestWorker(turns, turns, LatestWorker.Ending.ASK),
            turns);
    turns.drain();
  }

  private void formats(String... keys) {
    for (ExportChoice format : model.formats()) {
      format.chosenProperty().set(Stream.of(keys).anyMatch(format.key()::equals));
    }
    turns.drain();
  }

  private ExportPreview preview() {
    return model.previewProperty().get();
  }

  @Test
  void sceneOnTheBenchAsCIsChosenAtFirst() {
    assertThat(model.scenes().stream().filter(ExportChoice::chosen).map(ExportChoice::key))
        .containsExactly("working");
    assertThat(model.formats().stream().map(ExportChoice::key))
        .containsExactlyElementsOf(ExportFormats.keys());
    assertThat(preview().places())
        .extracting(place -> place.path().getFileName().toString())
        .containsExactly("working.c", "working.h");
    assertThat(model.readyBinding().get()).isTrue();
  }

  // 200 frames of 67 bytes: DESIGN's sample; 13,400 stands in the test of the command line too.
  @Test
  void sizesAreThoseOfTheTableAndTheFirmwarePacker() throws IOException {
    ExportPreview.Size size = preview().sizes().get(0);
    assertThat(size.rawBytes()).isEqualTo(13400);
    formats("packed");
    model.write();
    turns.drain();
    assertThat(folder.resolve("out/working.packed")).hasSize(size.packedBytes().orElseThrow());
  }

  @Test
  void nothingIsWrittenBeforeItIsAskedFor() {
    formats("c", "bin", "firmware");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void writtenBytesAreTheFrameTable() throws IOException {
    formats("bin");
    model.write();
    assertThat(model.stageProperty().get()).isInstanceOf(ExportModel.Stage.Writing.class);
    turns.drain();
    Path bin = folder.resolve("out/working.bin");
    assertThat(model.stageProperty().get()).isEqualTo(done(bin));
    Project project = Samples.named("recovery-tractor");
    FrameTable table = FrameTable.of(project.rig(), project.scene("working").orElseThrow());
    byte[] frame = new byte[table.layout().bytes()];
    table.cursor().next(frame);
    assertThat(Files.readAllBytes(bin)).hasSize(13400).startsWith(frame);
    // What stands now is known for the next time.
    assertThat(preview().places().get(0).stands()).isTrue();
  }

  private static ExportModel.Stage done(Path... written) {
    return new ExportModel.Stage.Done(List.of(written));
  }

  @Test
  void cautionsOfHarmAndFailureStandBeforeAnythingIsWritten() {
    make(Samples.troubled(), Optional.of("wild"));
    assertThat(preview().complete()).isTrue();
    assertThat(preview().findings())
        .anyMatch(f -> f.text().startsWith("supply, scene wild") && f.text().contains("draws"))
        .anyMatch(f -> f.text().contains("photosensitive"));
    assertThat(preview().sizes().get(0).rawShare().orElseThrow()).isPositive();
  }

  @Test
  void whatIsMissingIsSaidAndStopsIt() {
    formats();
    model.scenes().forEach(scene -> scene.chosenProperty().set(false));
    model.folderProperty().set(Optional.empty());
    turns.drain();
    assertThat(preview().refusals()).hasSize(3);
    assertThat(model.readyBinding().get()).isFalse();
    model.write();
    turns.drain();
    assertThat(model.stageProperty().get()).isInstanceOf(ExportModel.Stage.Choosing.class);
  }

  @Test
  void addressIsJudgedOnlyWhereItCounts() {
    model.addressProperty().set("0x1ffffffff");
    turns.drain();
    assertThat(preview().refusals()).isEmpty();
    formats("hex");
    assertThat(preview().refusals().get(0)).contains("0x1ffffffff", "0xFFFFFFFF");
    model.addressProperty().set("0x4000");
    turns.drain();
    assertThat(preview().refusals()).isEmpty();
  }

  @Test
  void refusalOfTheDiskIsSaidAndNothingChanges() throws IOException {
    Path file = Files.writeString(folder.resolve("out"), "kept");
    model.write();
    turns.drain();
    assertThat(model.stageProperty().get())
        .isInstanceOfSatisfying(
            ExportModel.Stage.Failed.class, failed -> assertThat(failed.why()).contains("out"));
    assertThat(file).hasContent("kept");
  }

  @Test
  void strangeFolderInTheFirmwaresPlaceIsKept() throws IOException {
    Path strange = Files.createDirectories(folder.resolve("out/firmware"));
    Files.writeString(strange.resolve("mine.c"), "kept");
    formats("firmware");
    model.write();
    turns.drain();
    assertThat(model.stageProperty().get())
        .isInstanceOfSatisfying(
            ExportModel.Stage.Failed.class,
            failed ->
                assertThat(failed.why()).contains("has no record of what was exported there"));
    assertThat(strange.resolve("mine.c")).hasContent("kept");
  }

  @Test
  void cancelledExportLeavesNoFile() {
    formats("bin");
    model.write();
    model.cancel();
    turns.drain();
    assertThat(model.stageProperty().get())
        .isInstanceOfSatisfying(
            ExportModel.Stage.Failed.class, failed -> assertThat(failed.why()).contains("stopped"));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void folderIsAskedFor() {
    dialogs.files.add(folder);
    model.askFolder();
    assertThat(model.folderProperty().get()).contains(folder);
  }

  @Test
  void theNextExportBeginsAsTheLastOneWas() {
    formats("bin", "hex");
    model.addressProperty().set("0x4000");
    turns.drain();
    ExportWishes wishes = model.wishes();

    make(Samples.named("bench-rgbw"), Optional.empty(), wishes);

    assertThat(model.formats())
        .filteredOn(ExportChoice::chosen)
        .extracting(ExportChoice::key)
        .containsExactlyInAnyOrder("bin", "hex");
    assertThat(model.addressProperty().get()).isEqualTo("0x4000");
    assertThat(model.folderProperty().get()).contains(folder.resolve("out"));
  }
}
