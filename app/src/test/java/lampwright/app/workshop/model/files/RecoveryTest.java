package lampwright.app.workshop.model.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import lampwright.app.workshop.disk.FileHash;
import lampwright.app.workshop.disk.Recoveries;
import lampwright.app.workshop.disk.Recovery;
import lampwright.engine.json.ProjectWriter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecoveryTest {
  @TempDir Path folder;
  private Path state;
  private Path file;
  private Path beside;
  private Shop crashed;

  @BeforeEach
  void open() throws IOException {
    Locale.setDefault(Locale.ROOT);
    state = folder.resolve("state");
    file = Shop.saved(folder.resolve("tractor.lampwright.json"), "first");
    beside = Recoveries.beside(file);
    crashed = new Shop(folder.resolve("other-state"), Shop.dead(), new Turns());
  }

  private String kept() throws IOException {
    return Recovery.read(Files.readString(beside)).orElseThrow().text();
  }

  private void crash(String name) {
    crashed.open(file);
    crashed.rename(name);
    crashed.turns.drain();
  }

  @Test
  void firstEditIsKeptAtOnceAndTheNextWithinASecond() throws IOException {
    crash("second");
    assertThat(kept()).contains("\"second\"");
    crashed.rename("third");
    crashed.turns.pass(999);
    assertThat(kept()).contains("\"second\"");
    crashed.turns.pass(1);
    assertThat(kept()).contains("\"third\"");
  }

  @Test
  void manyEditsAreWrittenOnceASecond() throws IOException {
    crashed.open(file);
    int writes = 0;
    String before = "";
    for (int i = 0; i < 100; i++) {
      crashed.rename("n" + i);
      crashed.turns.pass(50);
      String now = kept();
      writes += now.equals(before) ? 0 : 1;
      before = now;
    }
    assertThat(writes).isBetween(5, 6);
  }

  @Test
  void savingAndUndoingRemoveTheRecoveryFile() {
    crash("second");
    crashed.save();
    crashed.turns.pass(1000);
    assertThat(beside).doesNotExist();
    crashed.rename("third");
    crashed.turns.pass(1000);
    assertThat(beside).exists();
    crashed.bench.undo();
    crashed.turns.pass(1000);
    assertThat(beside).doesNotExist();
  }

  @Test
  void recoveredChangesAreUnsavedAndUndoLeadsBackToTheFile() throws IOException {
    crash("second");
    Shop next = new Shop(state);
    next.dialogs.answers.add("Recover changes");
    next.open(file);
    assertThat(next.name()).isEqualTo("second");
    assertThat(next.files.document().changed()).isTrue();
    assertThat(Shop.on(file).name()).isEqualTo("first");
    // Until it is saved it is kept on.
    assertThat(kept()).contains("\"second\"");
    next.bench.undo();
    assertThat(next.name()).isEqualTo("first");
    assertThat(next.files.document().changed()).isFalse();
  }

  @Test
  void changesTurnedDownAreGone() {
    crash("second");
    Shop next = new Shop(state);
    next.dialogs.answers.add("Discard changes");
    next.open(file);
    assertThat(next.name()).isEqualTo("first");
    assertThat(beside).doesNotExist();
  }

  @Test
  void changesToLookAtLaterAreNotWrittenOver() throws IOException {
    crash("second");
    Shop next = new Shop(state, Shop.dead(), new Turns());
    next.dialogs.answers.add("Decide later");
    // Another dead one than the first, or it would take them for its own.
    Files.writeString(beside, Files.readString(beside).replace("process ", "process 9"));
    next.open(file);
    next.rename("other");
    next.turns.pass(2000);
    assertThat(kept()).contains("\"second\"");
    Shop last = new Shop(state);
    // In this one process the claim of the dead one still stands.
    last.dialogs.answers.add("Open anyway");
    last.dialogs.answers.add("Decide later");
    last.dialogs.answers.add("Recover changes");
    last.open(file);
    assertThat(last.name()).isEqualTo("other");
    assertThat(kept()).contains("\"second\"");
  }

  @Test
  void fileThatChangedSinceIsSaidSo() throws IOException {
    crash("second");
    Shop.saved(file, "theirs");
    Shop next = new Shop(state);
    next.dialogs.answers.add("Decide later");
    next.open(file);
    assertThat(next.dialogs.asked.get(0)).contains("changed since by another program");
    assertThat(next.name()).isEqualTo("theirs");
  }

  @Test
  void sameContentAsTheFileIsTidiedUpUnasked() throws IOException {
    crash("second");
    Shop.saved(file, "second");
    Shop next = new Shop(state);
    next.open(file);
    assertThat(next.dialogs.asked).isEmpty();
    assertThat(beside).doesNotExist();
  }

  @Test
  void damagedRecoveryFileIsReportedAndSetAside() throws IOException {
    crash("second");
    String whole = Files.readString(beside);
    Files.writeString(beside, whole.substring(0, whole.length() - 5));
    Shop next = new Shop(state);
    next.open(file);
    assertThat(next.name()).isEqualTo("first");
    Path aside = beside.resolveSibling(beside.getFileName() + ".damaged-1");
    assertThat(aside).exists();
    assertThat(beside).doesNotExist();
    assertThat(next.dialogs.told.get(0)).contains(aside.toString());
  }

  private void leaveUnsaved(String name) {
    Shop before = new Shop(state, Shop.dead(), new Turns());
    before.rename(name);
    before.turns.drain();
  }

  private static Shop begun(Shop shop) {
    shop.files.start(Optional.empty());
    shop.turns.pass(10);
    return shop;
  }

  @Test
  void projectNeverSavedIsListedAtTheStartAndRestored() {
    leaveUnsaved("unsaved");
    Shop next = begun(new Shop(state));
    assertThat(next.dialogs.asked).isEmpty();
    assertThat(next.files.leftovers()).hasSize(1);
    Leftover left = next.files.leftovers().get(0);
    assertThat(left.project().name()).isEqualTo("unsaved");
    assertThat(left.file()).isEmpty();
    next.files.recover(left, () -> next.ended = true);
    next.turns.pass(10);
    assertThat(next.ended).isTrue();
    assertThat(next.name()).isEqualTo("unsaved");
    assertThat(next.files.document().file()).isEmpty();
    assertThat(next.files.document().changed()).isTrue();
    assertThat(next.files.leftovers()).isEmpty();
    // It is kept by this process now.
    assertThat(begun(new Shop(state, Shop.dead(), new Turns())).files.leftovers()).isEmpty();
  }

  @Test
  void leftWorkIsDiscardedOnlyWhenTheBuilderIsSure() {
    leaveUnsaved("unsaved");
    Shop next = begun(new Shop(state));
    Leftover left = next.files.leftovers().get(0);
    next.dialogs.answers.add("Cancel");
    next.files.discard(left);
    next.turns.drain();
    assertThat(left.place()).exists();
    assertThat(next.files.leftovers()).containsExactly(left);
    next.dialogs.answers.add("Discard changes");
    next.files.discard(left);
    next.turns.drain();
    assertThat(left.place()).doesNotExist();
    assertThat(next.files.leftovers()).isEmpty();
  }

  @Test
  void leftWorkOfAFileOpensTheFileAndIsNotAskedAboutAgain() throws IOException {
    // As where nothing can be written beside the file.
    String text = ProjectWriter.write(Shop.named("second"));
    Optional<String> saved = Optional.of(FileHash.of(Files.readAllBytes(file)));
    Recovery recovery =
        new Recovery(Optional.of(file), saved, Shop.dead(), Instant.ofEpochSecond(2), text);
    Path place = Files.createDirectories(state.resolve("recovery")).resolve("1-1-1.recovery");
    Files.writeString(place, recovery.write());
    Shop next = begun(new Shop(state));
    Leftover left = next.files.leftovers().get(0);
    assertThat(left.file()).contains(file);
    next.files.recover(left, () -> {});
    next.turns.drain();
    assertThat(next.dialogs.asked).isEmpty();
    assertThat(next.name()).isEqualTo("second");
    assertThat(next.files.document().file()).contains(file);
    assertThat(next.files.document().changed()).isTrue();
  }

  @Test
  void damagedWorkThatWasLeftIsSetAside() throws IOException {
    leaveUnsaved("unsaved");
    Path place;
    try (var all = Files.list(state.resolve("recovery"))) {
      place = all.findFirst().orElseThrow();
    }
    String whole = Files.readString(place);
    Files.writeString(place, whole.substring(0, whole.length() - 5));
    Shop next = begun(new Shop(state));
    assertThat(next.files.leftovers()).isEmpty();
    assertThat(place).doesNotExist();
    assertThat(next.dialogs.told).hasSize(1);
  }

  @Test
  void folderThatTakesNoFileHasItsChangesKeptInTheStateFolder() throws IOException {
    // A folder where the recovery file would stand: root can't write that either.
    Files.createDirectories(beside.resolve("in-the-way"));
    Shop before = new Shop(state, Shop.dead(), new Turns());
    before.files.open(file);
    before.turns.drain();
    before.rename("second");
    before.turns.drain();
    assertThat(before.files.autosave().troubleProperty().get()).isEmpty();
    assertThat(state.resolve("recovery")).isNotEmptyDirectory();
    assertThat(before.files.autosave().safeProperty().get()).contains(before.bench.project());
  }

  @Test
  void damagedFileCanBeRescuedFromItsRecoveryFile() throws IOException {
    crash("second");
    Files.writeString(file, "{");
    Shop next = new Shop(state);
    next.dialogs.answers.add("Recover changes");
    next.open(file);
    assertThat(next.name()).isEqualTo("second");
    assertThat(next.files.document().file()).isEmpty();
    assertThat(file).hasContent("{");
  }
}
