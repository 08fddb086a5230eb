package lampwright.app.workshop.model.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.json.ProjectFiles;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilesModelTest {
  @TempDir Path folder;
  private Path state;
  private Path file;
  private Shop shop;

  @BeforeEach
  void open() throws IOException {
    Locale.setDefault(Locale.ROOT);
    state = folder.resolve("state");
    file = Shop.saved(folder.resolve("tractor.lampwright.json"), "first");
    shop = new Shop(state);
  }

  @Test
  void freshProjectIsUnchangedAndHasNoFile() {
    assertThat(shop.files.document().changed()).isFalse();
    assertThat(shop.files.document().file()).isEmpty();
    assertThat(shop.files.document().titleProperty().get())
        .isEqualTo("Unsaved project · Lampwright");
  }

  @Test
  void openedFileIsOnTheBenchUnchanged() {
    shop.open(file);
    assertThat(shop.name()).isEqualTo("first");
    assertThat(shop.files.document().changed()).isFalse();
    assertThat(shop.files.document().titleProperty().get())
        .isEqualTo("tractor.lampwright.json · Lampwright");
    assertThat(shop.files.recents().list()).containsExactly(file);
  }

  @Test
  void editChangesAndUndoUnchangesIt() {
    shop.open(file);
    shop.rename("second");
    assertThat(shop.files.document().changed()).isTrue();
    assertThat(shop.files.document().titleProperty().get()).contains("(changed)");
    shop.bench.undo();
    assertThat(shop.files.document().changed()).isFalse();
  }

  @Test
  void saveWritesTheBenchAndItIsUnchangedThen() throws IOException {
    shop.open(file);
    shop.rename("second");
    shop.save();
    assertThat(Shop.on(file)).isEqualTo(shop.bench.project());
    assertThat(shop.files.document().changed()).isFalse();
  }

  @Test
  void editWhileItIsWrittenStaysAChange() throws IOException {
    shop.open(file);
    shop.rename("second");
    shop.files.save();
    // Its hash is looked at and what is to be written is taken; then comes the edit.
    shop.turns.execute(() -> shop.turns.execute(() -> shop.rename("third")));
    shop.turns.drain();
    assertThat(shop.files.document().changed()).isTrue();
    assertThat(Shop.on(file).name()).isEqualTo("second");
  }

  @Test
  void projectNeverSavedAsksForAFileAndGivesItOurEnding() throws IOException {
    shop.rename("second");
    shop.dialogs.files.add(folder.resolve("new"));
    shop.save();
    Path named = folder.resolve("new.lampwright.json");
    assertThat(Shop.on(named).name()).isEqualTo("second");
    assertThat(shop.files.document().file()).contains(named);
  }

  @Test
  void anotherProjectOnTheBenchIsToldAndASaveIsNot() {
    List<String> opened = new ArrayList<>();
    shop.files.document().setWhenOpened(() -> opened.add(shop.name()));
    shop.rename("second");
    shop.dialogs.files.add(folder.resolve("new"));
    shop.save();
    assertThat(opened).isEmpty();
    shop.open(file);
    assertThat(opened).containsExactly("first");
  }

  @Test
  void nameThatOnlyWithItsEndingStandsAlreadyIsAskedAbout() throws IOException {
    shop.rename("second");
    shop.dialogs.files.add(folder.resolve("tractor"));
    shop.dialogs.answers.add("Cancel");
    shop.save();
    assertThat(Shop.on(file).name()).isEqualTo("first");
    assertThat(shop.files.document().file()).isEmpty();
  }

  @Test
  void damagedFileIsListedAndTheBenchStays() throws IOException {
    shop.open(file);
    Path damaged = Files.writeString(folder.resolve("d.json"), "{\"lampwright\": 1, \"x\": 2}");
    shop.open(damaged);
    assertThat(shop.dialogs.told).hasSize(1);
    assertThat(shop.dialogs.told.get(0))
        .contains("d.json could not be opened", "x: ", "at line 1, column ", "rig: ");
    assertThat(shop.name()).isEqualTo("first");
    assertThat(shop.files.document().file()).contains(file);
  }

  @Test
  void missingFileAndFolderAreSaidSo() {
    shop.open(folder.resolve("none.json"));
    shop.open(folder);
    assertThat(shop.dialogs.told).hasSize(2);
    assertThat(shop.dialogs.told.get(0)).contains("there is no such file");
    assertThat(shop.dialogs.told.get(1)).contains("is a folder, not a project file");
  }

  @Test
  void openingAsksAboutChangesAndMayBeCalledOff() {
    shop.rename("second");
    shop.dialogs.answers.add("Cancel");
    shop.open(file);
    assertThat(shop.name()).isEqualTo("second");
    shop.dialogs.answers.add("Don't save");
    shop.open(file);
    assertThat(shop.name()).isEqualTo("first");
  }

  @Test
  void quitSavesFirstIfToldSo() throws IOException {
    shop.open(file);
    shop.rename("second");
    shop.dialogs.answers.add("Save");
    shop.files.quit();
    assertThat(shop.ended).isFalse();
    shop.turns.drain();
    assertThat(shop.ended).isTrue();
    assertThat(Shop.on(file).name()).isEqualTo("second");
  }

  @Test
  void quitWithoutSavingLeavesNothingToRecover() throws IOException {
    shop.open(file);
    shop.rename("second");
    shop.turns.pass(2000);
    shop.dialogs.answers.add("Don't save");
    shop.rename("third");
    shop.files.quit();
    shop.turns.pass(5000);
    assertThat(shop.ended).isTrue();
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactlyInAnyOrder(file, state);
    }
  }

  @Test
  void failedSaveBeforeQuittingKeepsTheProgram() throws IOException {
    shop.rename("second");
    // A file where the folder would be: refused to root as well, whom no permission stops.
    Path noFolder = Files.writeString(folder.resolve("full"), "");
    shop.dialogs.files.add(noFolder.resolve("p.lampwright.json"));
    shop.dialogs.answers.add("Save");
    shop.dialogs.answers.add("Back");
    shop.files.quit();
    shop.turns.drain();
    assertThat(shop.ended).isFalse();
    assertThat(shop.dialogs.asked.get(1)).contains("there is no such folder", "Nothing is lost");
    assertThat(shop.name()).isEqualTo("second");
    assertThat(shop.files.document().changed()).isTrue();
  }

  @Test
  void folderThatIsGoneOffersAnotherPlace() throws IOException {
    Path inner = Files.createDirectory(folder.resolve("inner"));
    Path there = Shop.saved(inner.resolve("p.lampwright.json"), "first");
    shop.open(there);
    shop.rename("second");
    Files.delete(there);
    Files.delete(inner);
    Path elsewhere = folder.resolve("q.lampwright.json");
    shop.dialogs.answers.add("Save as…");
    shop.dialogs.files.add(elsewhere);
    shop.save();
    assertThat(Shop.on(elsewhere).name()).isEqualTo("second");
    assertThat(shop.files.document().changed()).isFalse();
  }

  @Test
  void otherContentIsNeverOverwrittenUnasked() throws IOException {
    shop.open(file);
    shop.rename("mine");
    Shop.saved(file, "theirs");
    shop.dialogs.answers.add("Decide later");
    shop.save();
    assertThat(Shop.on(file).name()).isEqualTo("theirs");
    shop.dialogs.answers.add("Keep my changes");
    shop.save();
    assertThat(Shop.on(file).name()).isEqualTo("mine");
    assertThat(shop.files.document().changed()).isFalse();
  }

  @Test
  void reloadedFileCanBeUndone() throws IOException {
    shop.open(file);
    shop.rename("mine");
    Shop.saved(file, "theirs");
    shop.dialogs.answers.add("Reload file");
    shop.files.lookOutside();
    shop.turns.drain();
    assertThat(shop.name()).isEqualTo("theirs");
    assertThat(shop.files.document().changed()).isFalse();
    shop.bench.undo();
    assertThat(shop.name()).isEqualTo("mine");
    assertThat(shop.files.document().changed()).isTrue();
  }

  @Test
  void outsideChangeIsNoticedWithinASecondAndAskedAboutOnce() throws IOException {
    shop.files.start(Optional.of(file));
    shop.turns.pass(1500);
    Shop.saved(file, "theirs");
    shop.dialogs.answers.add("Decide later");
    shop.turns.pass(1000);
    assertThat(shop.dialogs.asked).hasSize(1);
    shop.turns.pass(5000);
    assertThat(shop.dialogs.asked).hasSize(1);
  }

  @Test
  void sameContentWrittenAgainIsNoChange() throws IOException {
    shop.files.start(Optional.of(file));
    shop.turns.pass(1500);
    ProjectFiles.save(Shop.on(file), file);
    shop.turns.pass(5000);
    assertThat(shop.dialogs.asked).isEmpty();
  }

  @Test
  void ownSavingIsNoOutsideChange() {
    shop.files.start(Optional.of(file));
    shop.turns.pass(1500);
    shop.rename("second");
    shop.save();
    shop.turns.pass(5000);
    assertThat(shop.dialogs.asked).isEmpty();
  }

  @Test
  void deletedFileIsNoticedAndCanBeSavedAgain() throws IOException {
    shop.files.start(Optional.of(file));
    shop.turns.pass(1500);
    Files.delete(file);
    shop.dialogs.answers.add("Decide later");
    shop.turns.pass(1000);
    assertThat(shop.dialogs.asked.get(0)).contains("no longer exists");
    assertThat(shop.files.document().changed()).isTrue();
    shop.save();
    assertThat(Shop.on(file).name()).isEqualTo("first");
  }

  @Test
  void secondWorkshopSaysThatTheFirstHasTheFile() {
    shop.open(file);
    Shop second = new Shop(state, Shop.dead(), shop.turns);
    second.dialogs.answers.add("Cancel");
    second.open(file);
    assertThat(second.dialogs.asked.get(0)).contains("is open in another Lampwright window");
    assertThat(second.files.document().file()).isEmpty();
  }

  @Test
  void claimEndsWithTheDocument() {
    shop.open(file);
    shop.files.newProject();
    shop.turns.drain();
    Shop second = new Shop(state, Shop.dead(), shop.turns);
    second.open(file);
    assertThat(second.files.document().file()).contains(file);
  }

  @Test
  void atMostTenLastFilesAreKeptTheLastFirst() throws IOException {
    for (int i = 0; i < 12; i++) {
      shop.open(Shop.saved(folder.resolve("p" + i + ".lampwright.json"), "n" + i));
    }
    shop.open(folder.resolve("p5.lampwright.json"));
    Shop next = new Shop(state);
    next.files.start(Optional.empty());
    next.turns.drain();
    assertThat(next.files.recents().list())
        .hasSize(10)
        .startsWith(folder.resolve("p5.lampwright.json"), folder.resolve("p11.lampwright.json"))
        .endsWith(folder.resolve("p2.lampwright.json"));
  }

  @Test
  void unreadableStateIsNotedAndStopsNothing() throws IOException {
    Files.createDirectories(state.resolve("recent"));
    Files.writeString(state.resolve("recovery"), "a file where a folder should be");
    shop.files.start(Optional.of(file));
    shop.turns.drain();
    assertThat(shop.name()).isEqualTo("first");
    assertThat(shop.files.noteProperty().get()).isPresent();
  }
}
