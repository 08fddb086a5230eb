package lampwright.app.workshop.model.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.app.workshop.disk.Recoveries;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.engine.disk.NamedPipe;
import lampwright.engine.disk.Owner;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever lies on the disk and whatever fails: nothing hangs, stays busy, or is untrue. */
class TrustTest {
  private static final Duration NEVER = Duration.ofMinutes(5);

  @TempDir Path folder;
  private Path state;
  private Path file;
  private Shop shop;

  @BeforeEach
  void open() throws IOException {
    Locale.setDefault(Locale.ROOT);
    state = folder.resolve("state");
    file = Shop.saved(folder.resolve("p.lampwright.json"), "first");
    shop = new Shop(state);
  }

  private static void sparse(Path place, long bytes) throws IOException {
    try (RandomAccessFile sparse = new RandomAccessFile(place.toFile(), "rw")) {
      sparse.setLength(bytes);
    }
  }

  private void isOpenAndNotBusy() {
    assertThat(shop.name()).isEqualTo("first");
    assertThat(shop.files.busyProperty().get()).isFalse();
  }

  @Test
  void pipeIsRefusedInWordsAndNothingStaysBusy() throws InterruptedException {
    Path pipe = NamedPipe.at(folder.resolve("pipe.lampwright.json"));

    assertTimeoutPreemptively(NEVER, () -> shop.open(pipe));

    assertThat(shop.dialogs.told).singleElement().asString().contains("must be a regular file");
    assertThat(shop.files.busyProperty().get()).isFalse();
  }

  @Test
  void pipeInPlaceOfTheRecoveryFileIsPutAside() throws InterruptedException {
    NamedPipe.at(Recoveries.beside(file));

    assertTimeoutPreemptively(NEVER, () -> shop.open(file));

    isOpenAndNotBusy();
    assertThat(shop.dialogs.told).singleElement().asString().contains("damaged");
    assertThat(Recoveries.beside(file)).doesNotExist();
  }

  @Test
  void recoveryFileWithoutEndIsPutAside() throws IOException {
    sparse(Recoveries.beside(file), 200L << 30);

    assertTimeoutPreemptively(NEVER, () -> shop.open(file));

    isOpenAndNotBusy();
    assertThat(shop.dialogs.told).singleElement().asString().contains("damaged");
  }

  @Test
  void pipesAndEndlessFilesInTheStateFolderStopNothing() throws IOException, InterruptedException {
    Files.createDirectories(state.resolve("recovery"));
    NamedPipe.at(state.resolve("recent"));
    NamedPipe.at(state.resolve("recovery").resolve("1-1-1.recovery"));
    sparse(state.resolve("recovery").resolve("2-1-1.recovery"), 200L << 30);

    assertTimeoutPreemptively(
        NEVER,
        () -> {
          shop.files.start(Optional.empty());
          shop.turns.drain();
          shop.open(file);
        });

    isOpenAndNotBusy();
    assertThat(shop.dialogs.told).hasSize(2);
    assertThat(shop.files.noteProperty().get().orElseThrow()).contains("recent");
  }

  @Test
  void errorIsShownInWordsAndTheWorkIsOver() {
    Turns turns = new Turns();
    Workplace place =
        new Workplace(
            new Bench(Projects.fresh()),
            new ReadyAnswers(),
            turns,
            turns,
            turns,
            state,
            Owner.self());
    List<String> bad = new ArrayList<>();
    List<Throwable> failures =
        List.of(
            new OutOfMemoryError("Java heap space"),
            new StackOverflowError(),
            new IllegalStateException("odd"),
            new IOException("No space left on device"));
    for (Throwable failure : failures) {
      place.then(
          turns,
          () -> {
            if (failure instanceof Error error) {
              throw error;
            }
            if (failure instanceof IOException trouble) {
              throw trouble;
            }
            throw (RuntimeException) failure;
          },
          good -> bad.add("no"),
          bad::add);
    }

    turns.drain();

    assertThat(bad)
        .containsExactly(
            "not enough memory", "StackOverflowError", "odd", "No space left on device");
  }

  @Test
  void unsavedWorkIsKeptWhileAProjectIsRead() {
    Turns reader = new Turns();
    shop = new Shop(state, Owner.self(), new Turns(), reader);
    shop.files.open(file);
    shop.turns.drain();
    assertThat(shop.files.busyProperty().get()).isTrue();

    shop.rename("meanwhile");
    shop.turns.drain();

    assertThat(shop.files.autosave().safeProperty().get()).isPresent();
  }

  @Test
  void deadAtAnyStepOfASaveOlderWorkIsNeverOffered() throws IOException {
    Shop crashed = new Shop(folder.resolve("other-state"), Shop.dead(), new Turns());
    crashed.open(file);
    crashed.rename("second");
    crashed.turns.drain();
    crashed.rename("third");
    crashed.files.save();
    // Past the question whether the file has changed: what is saved now is on its way.
    crashed.turns.step();
    crashed.turns.step();
    crashed.rename("fourth");
    boolean goesOn = true;
    for (int step = 0; goesOn; step++) {
      Path copy = Files.createDirectory(folder.resolve("step-" + step));
      for (Path each : List.of(file, Recoveries.beside(file))) {
        if (Files.exists(each)) {
          Files.copy(each, copy.resolve(each.getFileName()));
        }
      }
      looksTrue(copy.resolve(file.getFileName()), List.of("first", "second", "third", "fourth"));
      goesOn = crashed.turns.step();
    }
    crashed.turns.pass(1000);
    assertThat(Shop.on(file).name()).isEqualTo("third");
    assertThat(Files.readString(Recoveries.beside(file))).contains("fourth");
  }

  private static void looksTrue(Path copy, List<String> order) throws IOException {
    int saved = order.indexOf(Shop.on(copy).name());
    Shop next = new Shop(copy.resolveSibling("state"));
    next.dialogs.answers.add("Recover changes");
    next.open(copy);
    for (String asked : next.dialogs.asked) {
      assertThat(asked).doesNotContain("something else");
      assertThat(order.indexOf(next.name())).isGreaterThan(saved);
    }
  }

  @Test
  void secondSaveThatComesBeforeTheFirstIsKnownAsksNothing() throws IOException {
    shop.open(file);
    shop.rename("second");
    shop.files.save();
    shop.turns.step();
    shop.turns.step();
    shop.rename("third");
    shop.files.save();
    shop.turns.drain();

    assertThat(shop.dialogs.asked).isEmpty();
    assertThat(Shop.on(file).name()).isEqualTo("third");
  }

  // A kill among overlapping saves once made a recovery file untrue in this way.
  @Test
  void deadAmongOverlappingSavesNothingUntrueIsSaid() throws IOException {
    Shop crashed = new Shop(folder.resolve("other-state"), Shop.dead(), new Turns());
    crashed.open(file);
    List<String> order = new ArrayList<>(List.of("first"));
    boolean goesOn = true;
    for (int step = 0; goesOn; step++) {
      if (step < 40) {
        order.add("n" + step);
        crashed.rename("n" + step);
        if (step % 3 == 0) {
          crashed.files.save();
        }
        crashed.turns.later(500);
      }
      Path copy = Files.createDirectory(folder.resolve("step-" + step));
      for (Path each : List.of(file, Recoveries.beside(file))) {
        if (Files.exists(each)) {
          Files.copy(each, copy.resolve(each.getFileName()));
        }
      }
      looksTrue(copy.resolve(file.getFileName()), order);
      goesOn = crashed.turns.step();
    }
    assertThat(crashed.dialogs.asked).isEmpty();
  }

  @Test
  void firstSaveOfAProjectLeavesNothingToRecoverOnceItIsWhole() throws IOException {
    Path target = folder.resolve("new.lampwright.json");
    Shop crashed = new Shop(state, Shop.dead(), new Turns());
    crashed.rename("new");
    crashed.turns.drain();
    crashed.dialogs.files.add(target);
    crashed.files.save();
    while (!Files.exists(target)) {
      assertThat(crashed.turns.step()).isTrue();
    }

    shop.files.start(Optional.empty());
    shop.turns.drain();

    assertThat(shop.dialogs.asked).isEmpty();
  }

  @Test
  void openingRemovesWhatKilledSavesLeft() throws IOException {
    Files.writeString(
        folder.resolve(".lampwright-7-1-0a1b2c3d-0000-4000-8000-0123456789ab.part"), "half");
    Files.writeString(folder.resolve(".lampwright-notes.part"), "the builder's");

    shop.open(file);

    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left.map(p -> p.getFileName().toString()))
          .contains(".lampwright-notes.part")
          .noneMatch(name -> name.startsWith(".lampwright-7"));
    }
  }
}
